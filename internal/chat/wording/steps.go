package wording

import (
	"strconv"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// StepsView is a run, or a plan that is none yet, of which somebody asks what to
// do now.
type StepsView struct {
	// Run is the run; zero for a plan.
	Run  kitchen.Run
	Plan kitchen.Plan
	// At is which of the steps before the flame is at hand, from 0: nobody reports
	// those, so who asks for the next one gets it. See [StepsBeforeFlame].
	At int
	// Now is in the kitchen's zone.
	Now time.Time
}

// step is one thing to do, how to tell that it is right, and the trap in it.
type step struct{ do, right, trap string }

// Steps says the step at hand, one at a time.
func Steps(v StepsView) chat.Post {
	if v.Run.No == 0 || v.Run.Stage == kitchen.StagePlanned || v.Run.Stage == kitchen.StagePreparing {
		return v.beforeFlame()
	}
	run := RunView{Run: v.Run, Now: v.Now}
	st := stageStep(v.Run, v.Now)
	var s sheet
	s.add(must, say("**Now: "+st.do+"**"))
	s.add(must, run.state())
	v.add(&s, st)
	var own sheet
	run.stage(&own)
	s.then(nil, own.buttons...)
	return s.post(chat.Answer)
}

func (v StepsView) add(s *sheet, st step) {
	if st.right != "" {
		s.add(must, say("Right when "+st.right+"."))
	}
	if st.trap != "" {
		s.add(should, say("Trap: "+st.trap+"."))
	}
}

// StepsBeforeFlame is how many steps there are before the cooker is lit.
func StepsBeforeFlame(p kitchen.Plan) int { return len(stepsOf(p)) }

func (v StepsView) beforeFlame() chat.Post {
	all := stepsOf(v.Plan)
	i := min(max(v.At, 0), len(all)-1)
	st := all[i]
	var s sheet
	s.add(must, say("**"+strconv.Itoa(i+1)+" of "+strconv.Itoa(len(all))+": "+st.do+"**"))
	v.add(&s, st)
	switch {
	case i+1 < len(all):
		s.then(nil, tap("Next step", "next"))
	case v.Run.No != 0:
		s.then(say("Next: light it and say `heat on`."), runTap(v.Run.No, "Heat on", "heat on"))
	default:
		s.then(say("Next: `cook it`, and it gets its number."), tap("Cook it", "cook it"))
	}
	return s.post(chat.Answer)
}

// way is a vessel filled by a method.
type way struct {
	vessel kitchen.Vessel
	method kitchen.Method
}

// stepsOf are the steps before the flame, for every way of filling in the plan.
func stepsOf(p kitchen.Plan) []step {
	var out []step
	seen := map[way]bool{}
	for _, l := range p.Lines {
		w := way{l.Item.Container.Vessel, l.Method}
		if seen[w] || w.vessel == 0 {
			continue
		}
		seen[w] = true
		out = append(out, weigh(l))
		switch {
		case w.vessel == kitchen.Bag && w.method == kitchen.Measured:
			out = append(out, bagMeasured()...)
		case w.method == kitchen.Soaked:
			out = append(out, soakedGrain()...)
			if w.vessel == kitchen.Bag {
				out = append(out, foldBag())
			} else {
				out = append(out, closeJar())
			}
		default:
			out = append(out, jarMeasured()...)
		}
	}
	return append(out, loadPot(p))
}

// weigh is the first step: what goes into each.
func weigh(l kitchen.Line) step {
	vessel := l.Item.Container.Vessel.String()
	if l.Method == kitchen.Soaked {
		return step{
			"weigh " + grams(l.All.Dry) + " " + l.Grain.String() + ", dry, for " + many(l.Item.Count, l.Item.Container) + ".",
			"it is rinsed until the water stays clear", "dust of dry grain is bad to breathe: mask",
		}
	}
	return step{
		"weigh " + amounts(l) + " for each " + vessel + ", " + whole(float64(l.Item.Count)) + " in all.",
		"each is labelled before it is filled", "felt pen goes in the steam",
	}
}

func bagMeasured() []step {
	return []step{
		{"grain and water into the bag, close it in your hand, knead.", "every kernel is wet, no dry pocket in a corner", "a wet patch doesn't breathe: keep it up"},
		foldBag(),
	}
}

func foldBag() step {
	return step{"air out, gussets out, fold the top towards the patch.", "the patch is free and dry", "a bag sealed tight bursts; seal it later, in still or filtered air"}
}

func jarMeasured() []step {
	return []step{
		{"simmer the grain in its measured water, stirring, until the water is gone.", "a kernel crushes between thumb and nail, no white core", "burst kernels go sticky: stop earlier"},
		{"fill the jars to the headspace, loosely.", "they can still be shaken", "filled dry, grain cakes in the jar"},
		closeJar(),
	}
}

func closeJar() step {
	return step{"lids on, a quarter turn loose or with a filter; foil over them.", "steam gets in, drops don't", "a tight lid cracks the jar or gulps air later"}
}

func soakedGrain() []step {
	return []step{
		{"soak it 12 to 24" + nb + "h, water well over the grain.", "kernels are full and heavy", "in a warm kitchen it sours: change the water, or fridge"},
		{"simmer about 15" + nb + "min in plenty of water.", "a kernel crushes between thumb and nail, no white core", "burst kernels go sticky: stop earlier"},
		{"drain hot, spread, let the steam off 30 to 60" + nb + "min.", "the surface is dull, a paper stays dry", "wet on the outside, jars turn to mud"},
		{"fill by weight, to the headspace.", "they can still be shaken", "left standing wet and raw, it sours"},
	}
}

// loadPot is the last step before the flame.
func loadPot(p kitchen.Plan) step {
	water := ""
	if len(p.Loads.Each) > 0 {
		water = litres(p.Loads.Each[0].Water) + " water, "
	}
	bags := false
	for _, l := range p.Lines {
		bags = bags || l.Item.Container.Vessel == kitchen.Bag
	}
	if bags {
		return step{water + "rack, bags on it, a plate on top, lid.", "none touches the water, the wall or the vent", "a bag over the vent blocks it"}
	}
	return step{water + "rack, jars on it, lid.", "none stands on the floor of the pot", "cold jars in boiling water crack"}
}

// stageStep is what to do while a run is on the stove or cools.
func stageStep(r kitchen.Run, now time.Time) step {
	_, out := r.LastStep(kitchen.KindOutOfPot)
	switch r.Stage {
	case kitchen.StageHeating:
		return step{"full flame, vent open, until it blows steadily.", "the plume is steady, as long as a hand, no puffs", "closed too early, air stays in and it is colder than it shows"}
	case kitchen.StageVenting:
		return step{"let it blow for 10" + nb + "min, then weight on.", "the plume never stopped", "turning the flame down now draws air in"}
	case kitchen.StageRising:
		return step{"full flame until " + psi(r.Hold.At) + ", then down.", "the gauge stands there, or the weight rocks as its maker says", "the hold counts from there, not from the weight"}
	case kitchen.StageAtPressure:
		return step{"flame so low that it just stays there.", "the gauge stands still; a weight rocks now and then", "rocking hard boils the water off"}
	case kitchen.StagePressureLost:
		return step{"full flame, if there is water; then say it is back.", "it stands at " + psi(r.Hold.At) + " again", "sagging at full flame means dry: heat off, shut till cold"}
	case kitchen.StageFalling:
		return step{"leave it alone, shut, off the flame's heat.", "it shows zero and the weight doesn't hiss", "cooled by force it boils over and cracks jars"}
	case kitchen.StageCooling:
		if out {
			return step{"stand them apart in clean, still air; measure one later.", "the reading between two of them is within the limit twice", "a cool skin lies over a warm middle for hours"}
		}
		return step{"weight off, 10" + nb + "min, lid away from you; then out or leave it.", "nothing hisses any more", "a stuck lid can be pressure: wait"}
	case kitchen.StageCool:
		if off, _ := r.Ended(); off.Outcome != kitchen.Held {
			return step{"don't inoculate: the hold was short or not seen.", "", "what lives on in it grows faster than a culture"}
		}
		if until, rests := r.RestsUntil(now); rests {
			return step{"let it rest until " + near(now, until) + ".", "the grain stays as it was: no wet film, no cloud, no smell", "opened to look, it is lost"}
		}
		return step{"inoculate in clean air, or shelve.", "one is left blank: it parts the cook from the culture", "warm in the middle kills a culture: measure between"}
	case kitchen.StageGone:
		return step{"nothing: it is gone from the shelf.", "", ""}
	case kitchen.StageCalledOff:
		if r.Simmers() {
			return step{"flame off under the grain.", "it stops simmering", "dry, it scorches"}
		}
		return step{"leave it shut until it shows zero.", "it shows zero", "it may still be hot"}
	case kitchen.StagePlanned, kitchen.StagePreparing:
		return step{"load it, then light it.", "", ""}
	}
	panic("stage without a step")
}
