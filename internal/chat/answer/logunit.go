package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// logUnit tells the story of a unit; of several how each stands.
func (t *turn) logUnit(i phrase.LogUnit, ctx scene) (chat.Post, error) {
	targets, err := t.meantUnits(meaning{of: i.Of, at: t.now}, ctx)
	if post, asks := t.whichLoads(err, func(r kitchen.Ref) string { return storyOf(r).String() }); asks {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	var stories []wording.LogUnitView
	var said phrase.LogUnit
	for _, g := range targets {
		of, err := t.stories(g)
		if err != nil {
			return chat.Post{}, err
		}
		stories = append(stories, of...)
		said.Of.Refs = append(said.Of.Refs, g.ref())
	}
	t.kind, t.said, t.about = unitsKind, said.String(), targets[0].run.Subject()
	if len(stories) > 1 {
		return wording.LogUnits(stories), nil
	}
	if stories[0].Photos, err = t.photosOfUnit(stories[0].Unit); err != nil {
		return chat.Post{}, err
	}
	return wording.LogUnit(stories[0]), nil
}

func storyOf(r kitchen.Ref) phrase.LogUnit {
	return phrase.LogUnit{Of: phrase.Meant{Refs: []kitchen.Ref{r}}}
}

// stories are those of the units of a load, without their photos.
func (t *turn) stories(g target) ([]wording.LogUnitView, error) {
	load, err := t.load(g.run)
	if err != nil {
		return nil, err
	}
	run, err := t.runOrNone(g.run)
	if err != nil {
		return nil, err
	}
	units := g.units
	if len(units) == 0 {
		for _, u := range load.All {
			units = append(units, u.Ref.Unit)
		}
	}
	var out []wording.LogUnitView
	for _, n := range units {
		u, ok := load.Unit(n)
		if !ok {
			return nil, kitchen.NoSuchUnit{Ref: kitchen.Ref{Run: g.run, Units: []kitchen.UnitNo{n}}, Has: len(load.All)}
		}
		out = append(out, wording.LogUnitView{Story: wording.Story{Run: run, Now: t.arrived(), Who: t.who}, Unit: u})
	}
	return out, nil
}

// photosOfUnit are those that came with what was told of a unit and still counts.
func (t *turn) photosOfUnit(u kitchen.Unit) ([]wording.LogPhoto, error) {
	var story []moment
	for _, s := range u.Steps {
		if s.Entry != nil {
			story = append(story, moment{s.No, s.At})
		}
	}
	return t.photosOf(u.Ref.Run, story)
}
