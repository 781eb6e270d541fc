package wording

import (
	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// mostOver is where turning the flame down is no longer enough.
const mostOver = 3 * fifteenPSI / 15

// read is what the gauge was just told to show; zero when nothing was.
func (v RunView) read() unit.GaugeKPa {
	if e, ok := v.Told.(kitchen.AtPressure); ok {
		return e.Gauge
	}
	if e, ok := v.Told.(kitchen.PressureBack); ok {
		return e.Gauge
	}
	if e, ok := v.Told.(kitchen.GaugeRead); ok {
		return e.Gauge
	}
	return 0
}

// over leads with a pressure that the cooker isn't made for.
func (v RunView) over(s *sheet) {
	if real, over, much := v.Run.TooMuch(v.read()); much && over <= mostOver {
		s.add(must, say("**"+psi(real)+": "+upTo(1, over.PSI())+" over.** Heat down at once, and stay with it."))
	}
}

// farOver is the answer to a pressure that is dangerous; false for any other.
func (v RunView) farOver() (chat.Post, bool) {
	real, over, much := v.Run.TooMuch(v.read())
	if !much || over <= mostOver {
		return chat.Post{}, false
	}
	var s sheet
	s.add(must, say("**"+psi(real)+": "+upTo(1, over.PSI())+" over. Heat off now.** Stand back; leave "+v.no()+" shut until zero. The maker's manual says what then."))
	s.then(say("Next: say `heat off` once it is."), v.button("Heat is off", "heat off"))
	s.undoable()
	return s.post(chat.Answer), true
}
