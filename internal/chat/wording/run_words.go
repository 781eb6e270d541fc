package wording

import (
	"slices"
	"strconv"
	"time"

	"ryebell/internal/kitchen"
)

// kindWord is what is said of a run, as people say it.
func kindWord(k kitchen.Kind) string {
	switch k {
	case kitchen.KindRunBegun:
		return "put on"
	case kitchen.KindPrepBegun:
		return "preparation begun"
	case kitchen.KindPrepEnded:
		return "preparation done"
	case kitchen.KindHeatOn:
		return "heat on"
	case kitchen.KindSteam:
		return "steam"
	case kitchen.KindVentClosed:
		return "weight on"
	case kitchen.KindAtPressure:
		return "at pressure"
	case kitchen.KindPressureLost:
		return "lost pressure"
	case kitchen.KindPressureBack:
		return "back at pressure"
	case kitchen.KindDipped:
		return "pressure dipped"
	case kitchen.KindGaugeRead:
		return "gauge reading"
	case kitchen.KindHeatOff:
		return "heat off"
	case kitchen.KindAtZero:
		return "zero"
	case kitchen.KindOutOfPot:
		return "out of the pot"
	case kitchen.KindTempRead:
		return "reading"
	case kitchen.KindWaterIn:
		return "water in"
	case kitchen.KindWaterLeft:
		return "water left"
	case kitchen.KindRunGone:
		return "gone from the shelf"
	case kitchen.KindCalledOff:
		return "called off"
	case kitchen.KindTookOver:
		return "took over"
	case kitchen.KindHandOffered:
		return "hand-over asked"
	case kitchen.KindHandAccepted:
		return "took over"
	case kitchen.KindPingAnswered:
		return "ping answered"
	}
	panic("kind " + strconv.Itoa(int(k)) + " without words")
}

// kindSaid is a kind of entry as it is typed in an example: one that can't be said
// in words alone is stood for by the heat.
func kindSaid(k kitchen.Kind) string {
	if slices.Contains([]kitchen.Kind{
		kitchen.KindHeatOn, kitchen.KindSteam, kitchen.KindVentClosed, kitchen.KindAtPressure, kitchen.KindPressureLost,
		kitchen.KindPressureBack, kitchen.KindHeatOff, kitchen.KindAtZero, kitchen.KindOutOfPot, kitchen.KindCalledOff, kitchen.KindRunGone,
	}, k) {
		return kindWord(k)
	}
	return kindWord(kitchen.KindHeatOff)
}

// kindOf is the kind of an entry.
func kindOf(e kitchen.RunEntry) kitchen.Kind {
	switch e.(type) {
	case kitchen.RunBegun:
		return kitchen.KindRunBegun
	case kitchen.PrepBegun:
		return kitchen.KindPrepBegun
	case kitchen.PrepEnded:
		return kitchen.KindPrepEnded
	case kitchen.HeatOn:
		return kitchen.KindHeatOn
	case kitchen.Steam:
		return kitchen.KindSteam
	case kitchen.VentClosed:
		return kitchen.KindVentClosed
	case kitchen.AtPressure:
		return kitchen.KindAtPressure
	case kitchen.PressureLost:
		return kitchen.KindPressureLost
	case kitchen.PressureBack:
		return kitchen.KindPressureBack
	case kitchen.Dipped:
		return kitchen.KindDipped
	case kitchen.GaugeRead:
		return kitchen.KindGaugeRead
	case kitchen.HeatOff:
		return kitchen.KindHeatOff
	case kitchen.AtZero:
		return kitchen.KindAtZero
	case kitchen.OutOfPot:
		return kitchen.KindOutOfPot
	case kitchen.TempRead:
		return kitchen.KindTempRead
	case kitchen.WaterIn:
		return kitchen.KindWaterIn
	case kitchen.WaterLeft:
		return kitchen.KindWaterLeft
	case kitchen.RunGone:
		return kitchen.KindRunGone
	case kitchen.CalledOff:
		return kitchen.KindCalledOff
	case kitchen.TookOver:
		return kitchen.KindTookOver
	case kitchen.HandOffered:
		return kitchen.KindHandOffered
	case kitchen.HandAccepted:
		return kitchen.KindHandAccepted
	case kitchen.PingAnswered:
		return kitchen.KindPingAnswered
	}
	panic("entry without a kind")
}

// prepWord is a step of the preparation as it goes on.
func prepWord(p kitchen.Prep) string {
	switch p {
	case kitchen.Soaking:
		return "soaking"
	case kitchen.Simmering:
		return "simmering"
	case kitchen.Draining:
		return "draining"
	case kitchen.Drying:
		return "drying"
	case 0: // only its end was told
		return "preparation"
	}
	panic("preparation without words")
}

// stageWord is how far a run has come, in a word or two.
func stageWord(s kitchen.Stage) string {
	switch s {
	case kitchen.StagePlanned:
		return "not lit yet"
	case kitchen.StagePreparing:
		return "preparing"
	case kitchen.StageHeating:
		return "heating"
	case kitchen.StageVenting:
		return "venting"
	case kitchen.StageRising:
		return "coming up"
	case kitchen.StageAtPressure:
		return "at pressure"
	case kitchen.StagePressureLost:
		return "pressure lost"
	case kitchen.StageFalling:
		return "falling"
	case kitchen.StageCooling:
		return "cooling"
	case kitchen.StageCool:
		return "cool by reading"
	case kitchen.StageGone:
		return "gone from the shelf"
	case kitchen.StageCalledOff:
		return "called off"
	}
	panic("stage without words")
}

// stageAt is how far a run has come, by now.
func stageAt(r kitchen.Run, now time.Time) string {
	if r.NeverSeenCool(now) {
		return "never seen cool"
	}
	return stageWord(r.Stage)
}

// cookerOf names the cooker of a run in a sentence.
func cookerOf(name string) string {
	if name == "" {
		return "the cooker"
	}
	return "the " + name
}
