package answer

import (
	"time"

	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// endangered are the kin of units that were just lost.
func (t *turn) endangered(kitchen.RunNo, []kitchen.UnitNo) (*wording.KinView, error) { return nil, nil }

// inoculating says where units come from that something is put on.
func (t *turn) inoculating(kitchen.RunNo, kitchen.Inoculated, time.Time) (kitchen.Parentage, error) {
	return kitchen.Parentage{}, nil
}
