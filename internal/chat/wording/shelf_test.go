package wording

import (
	"testing"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// standing is a run of some order that was cool by a reading on the day it was put
// on.
func standing(t *testing.T, no kitchen.RunNo, o kitchen.Order) kitchen.Run {
	d := newDay(t, o, ana)
	d.at("10:45").say(ana, kitchen.AtPressure{}, 0)
	d.at("12:15").say(ana, kitchen.HeatOff{}, 0)
	d.at("13:30").say(ana, kitchen.AtZero{}, 0)
	d.at("20:00").say(ana, kitchen.TempRead{Temp: 26, Where: kitchen.Middle}, 0)
	d.run.No = no
	return d.run
}

// wide is a post without its buttons, a paragraph in a line.
func wide(p chat.Post) string {
	p.Buttons = nil
	return plain(chat.Plain(p, 1000))
}
