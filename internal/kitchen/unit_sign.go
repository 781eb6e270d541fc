package kitchen

import "slices"

// Sign is what a unit looks or smells like, in the words of the trade.
type Sign uint8

// The signs. The numbers stand in the book: new ones go to the end.
const (
	// LooksFine takes a suspicion back.
	LooksFine Sign = iota + 1
	// LooksOdd is any doubt that no other sign names.
	LooksOdd
	LooksWet
	Slimy
	SourSmell
	GreenMould
	BlueGreenDust
	BlackHeads
	PinkFluff
	Cobweb
	YeastySmell
	YellowDrops
	Stalled
	NothingGrew
	Bulging
	Leaking
	// WentBad is contamination of no kind said.
	WentBad
)

// Signs lists them all.
func Signs() []Sign {
	return []Sign{
		LooksFine, LooksOdd, LooksWet, Slimy, SourSmell, GreenMould, BlueGreenDust, BlackHeads, PinkFluff, Cobweb,
		YeastySmell, YellowDrops, Stalled, NothingGrew, Bulging, Leaking, WentBad,
	}
}

// String returns the words for logs and the book.
func (s Sign) String() string {
	if s > 0 && int(s) < len(signs) {
		return signs[s].words
	}
	return "sign not said"
}

// Cause is what a sign points to.
type Cause uint8

// The causes, in short.
const (
	TooWet Cause = iota + 1
	HoldShort
	AirNotVented
	ColdMiddle
	BadCulture
	OldCulture
	TransferAir
	Hands
	Pinhole
	DirtyLid
	Filter
	WarmGrain
	TooDryGrain
	TooCold
	Age
	GasBuiltUp
)

// String returns the words for logs.
func (c Cause) String() string {
	if c > 0 && int(c) < len(causeWords) {
		return causeWords[c]
	}
	return "cause not said"
}

var causeWords = [...]string{
	TooWet: "too wet", HoldShort: "hold too short", AirNotVented: "air not vented", ColdMiddle: "cold middle of a big bag",
	BadCulture: "bad culture", OldCulture: "old culture", TransferAir: "air at the transfer", Hands: "hands", Pinhole: "pinhole",
	DirtyLid: "dirty lid", Filter: "filter", WarmGrain: "grain too warm", TooDryGrain: "too dry", TooCold: "too cold", Age: "age or stress",
	GasBuiltUp: "gas from growth inside",
}

// Act is what the skilled do about a sign.
type Act uint8

// The acts.
const (
	// KeepWatching: leave it apart and look again.
	KeepWatching Act = iota + 1
	// OutUnopened: bag it shut and take it out.
	OutUnopened
	// OutAlarm: out at once, and the whole room is looked through.
	OutAlarm
	// OutAndRetire: out, and the culture with it.
	OutAndRetire
	// OnceMore: inoculate once more if it is clean.
	OnceMore
)

// Known is where a fact is known from.
type Known uint8

// A fact has a printed source, or is the practice of growers without one.
const (
	Sourced Known = iota + 1
	CommonPractice
)

// Finding is what a sign usually means. It is likely and never sure.
type Finding struct {
	// Likely is the organism or state, in the trade's own Latin; empty for none.
	Likely string
	// Days are after how many days from inoculating (a blank: from the cook) it
	// usually shows; zero for any time.
	From, To int
	// PointsTo are the causes, the likeliest first.
	PointsTo []Cause
	Do       Act
	// InBlankToo says that a blank with the same sign convicts the cook.
	InBlankToo bool
	// Dusty says that it gives off spores which harm lungs.
	Dusty bool
	Known Known
	// Source names where Known is [Sourced].
	Source string
}

// growersFAQ is the printed source of what bacteria and Trichoderma look like.
const growersFAQ = "a growers' FAQ on contaminants"

// signs says of each sign its words, what a unit that shows it is told to be, and
// what it usually points to.
var signs = [...]struct {
	words string
	says  UnitKind
	means Finding
}{
	LooksFine: {"fine", SaidFine, Finding{Do: KeepWatching, Known: CommonPractice}},
	LooksOdd:  {"odd", SaidSuspect, Finding{Do: KeepWatching, Known: CommonPractice}},
	LooksWet: {"wet", SaidSuspect, Finding{
		Likely: "Bacillus and other bacteria", From: 1, To: 4, PointsTo: []Cause{TooWet, HoldShort, AirNotVented, ColdMiddle, BadCulture},
		Do: KeepWatching, InBlankToo: true, Known: CommonPractice,
	}},
	Slimy: {"slimy", SaidContaminated, Finding{
		Likely: "Bacillus and other bacteria", From: 1, To: 4, PointsTo: []Cause{TooWet, HoldShort, AirNotVented, ColdMiddle, BadCulture},
		Do: OutUnopened, InBlankToo: true, Known: Sourced, Source: growersFAQ,
	}},
	SourSmell: {"sour smell", SaidContaminated, Finding{
		Likely: "Bacillus and other bacteria", From: 1, To: 4, PointsTo: []Cause{TooWet, HoldShort, AirNotVented, ColdMiddle, BadCulture},
		Do: OutUnopened, InBlankToo: true, Known: Sourced, Source: growersFAQ,
	}},
	GreenMould: {"green", SaidContaminated, Finding{
		Likely: "Trichoderma", From: 4, To: 10, PointsTo: []Cause{TransferAir, Hands, Pinhole, TooWet, OldCulture},
		Do: OutUnopened, Dusty: true, Known: Sourced, Source: growersFAQ,
	}},
	BlueGreenDust: {"blue-green dust", SaidContaminated, Finding{
		Likely: "Penicillium or Aspergillus", From: 4, To: 10, PointsTo: []Cause{TransferAir, Filter},
		Do: OutUnopened, Dusty: true, Known: CommonPractice,
	}},
	BlackHeads: {"black heads", SaidContaminated, Finding{
		Likely: "Rhizopus or Mucor", From: 1, To: 4, PointsTo: []Cause{TransferAir, DirtyLid},
		Do: OutUnopened, Dusty: true, Known: CommonPractice,
	}},
	PinkFluff: {"pink", SaidContaminated, Finding{
		Likely: "Neurospora", From: 1, To: 3, PointsTo: []Cause{TransferAir},
		Do: OutAlarm, Dusty: true, Known: CommonPractice,
	}},
	Cobweb: {"cobweb", SaidContaminated, Finding{
		Likely: "Hypomyces", PointsTo: []Cause{TransferAir}, Do: OutUnopened, Known: CommonPractice,
	}},
	YeastySmell: {"yeasty smell", SaidContaminated, Finding{
		Likely: "yeast", From: 3, To: 7, PointsTo: []Cause{BadCulture, Hands}, Do: OutAndRetire, Known: CommonPractice,
	}},
	YellowDrops: {"yellow drops", SaidSuspect, Finding{
		PointsTo: []Cause{Age, WarmGrain, BadCulture}, Do: KeepWatching, Known: CommonPractice,
	}},
	Stalled: {"stalled", SaidSuspect, Finding{
		From: 14, To: 21, PointsTo: []Cause{BadCulture, TooWet, TooCold}, Do: KeepWatching, Known: CommonPractice,
	}},
	NothingGrew: {"nothing grew", SaidDead, Finding{
		From: 7, To: 10, PointsTo: []Cause{WarmGrain, OldCulture, TooDryGrain}, Do: OnceMore, Known: CommonPractice,
	}},
	Bulging: {"bulging", SaidContaminated, Finding{
		PointsTo: []Cause{GasBuiltUp, HoldShort}, Do: OutUnopened, InBlankToo: true, Known: CommonPractice,
	}},
	Leaking: {"leaking", SaidContaminated, Finding{
		PointsTo: []Cause{Pinhole}, Do: OutUnopened, Known: CommonPractice,
	}},
	WentBad: {"contaminated", SaidContaminated, Finding{Do: OutUnopened, Known: CommonPractice}},
}

// says is what a unit that shows the sign is told to be.
func (s Sign) says() UnitKind {
	s.check()
	return signs[s].says
}

// Means is what the sign usually points to: data for the words likely and usually.
func (s Sign) Means() Finding {
	s.check()
	f := signs[s].means
	f.PointsTo = slices.Clone(f.PointsTo)
	return f
}

func (s Sign) check() {
	if s == 0 || int(s) >= len(signs) {
		panic("sign " + s.String())
	}
}
