package wording

import (
	"testing"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// A cook day as it reads: what was said when, and the whole answer.
func TestADayReads(t *testing.T) {
	d := newDay(t, bags(), ana)
	reads(t, d.begun(),
		"Run #12 in the big pot is yours, Ana.",
		"3 bags of 5 lb, agar.",
		"First: 3 L water, rack, load, lid.",
		"Then 15 psi for 90 min.",
		"The maker's manual comes first. Stay in",
		"earshot while the flame is on.",
		"Next: light it and say heat on.",
		"[Heat on] [Undo]")
	reads(t, d.at("10:25").say(ana, kitchen.Steam{}, 0),
		"#12 weight on at 10:35: vents from",
		"10:25, 10 min.",
		"Not seen: heat on.",
		"Full flame, a steady plume: air left in",
		"makes it colder than its gauge says.",
		"Steam burns: hands and face off the",
		"vent.",
		"Next: weight on when I ping.",
		"[Weight on] [Undo]")
	reads(t, Ping(d.pings()[0]),
		"Ana: #12 weight on now. Vented since",
		"10:25.",
		"Only if the plume was steady; else a few",
		"minutes more.",
		"[Weight on] [Not yet]")
	reads(t, d.at("10:35").say(ana, kitchen.VentClosed{}, 0),
		"#12 coming up since 10:35: 15 psi about",
		"10:50, a usual time.",
		"Next: at 15 psi say at pressure: the",
		"hold starts.",
		"[At pressure] [Undo]")
	reads(t, d.at("10:55").say(ana, kitchen.AtPressure{Gauge: unit.PSI(15)}, 10*time.Minute),
		"#12 heat off 12:15: 90 min at 15 psi",
		"from 10:45.",
		"Flame down so far that it just stays",
		"there.",
		"Next: I ping then. Lost pressure? Say so",
		"at once.",
		"[Lost pressure] [Undo]")
	reads(t, d.at("11:20").say(jo, kitchen.PressureLost{}, 0),
		"#12 lost pressure 11:20, 35 of 90 min",
		"held. The hold starts again.",
		"Is there water? I took 3 L. Sagging at",
		"full flame can mean dry: heat off then,",
		"shut till cold, never cold water in.",
		"How low did it fall? Like dropped to 11",
		"Next: full flame; then say back at 15.",
		"[Back at 15] [Heat is off] [Undo]")
	reads(t, d.at("11:21").say(jo, kitchen.Dipped{To: psiSaid(11)}, 0),
		"Noted: #12 fell to 11 psi; still lost.",
		"#12 lost pressure 11:20, 35 of 90 min",
		"held. The hold starts again.",
		"Next: full flame; then say back at 15.",
		"[Back at 15] [Heat is off] [Undo]")
	reads(t, d.at("11:32").say(jo, kitchen.PressureBack{Gauge: unit.PSI(15)}, 0),
		"#12 heat off 13:02: 90 min at 15 psi",
		"from 11:32.",
		"Water may run short about 12:55, by",
		"estimate for 3 L, for nobody told.",
		"Held before: 35 min, beside this hold",
		"and not part of it.",
		"Next: I ping then. Lost pressure? Say so",
		"at once.",
		"[Lost pressure] [Undo]")
	reads(t, Ping(d.pings()[1]),
		"Ana: #12 heat off now. 90 min at 15 psi,",
		"11:32 to 13:02.",
		"Leave it shut until it shows zero.",
		"[Heat is off] [Not yet]")
	reads(t, d.at("12:40").say(jo, kitchen.HeatOff{}, 0),
		"#12 heat off early: 68 of 90 min held,",
		"12:40.",
		"That stays in the book. Lit again, the",
		"hold starts anew.",
		"Before that 35 min, then it was lost:",
		"not part of the hold.",
		"Leave #12 shut until zero, about 14:10,",
		"a usual time.",
		"Next: light it again. Flame still on?",
		"Then undo.",
		"[Heat on] [Undo] [It's at zero]")
	reads(t, d.at("12:41").say(ana, kitchen.HeatOff{}, 0),
		"#12 heat off: Jo said so, 12:40. No",
		"second entry.",
		"Another time? heat off was 12:30")
}
