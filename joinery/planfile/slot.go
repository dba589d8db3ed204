package planfile

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"
)

var movesText = pattern.New(`(?i)^(?:the\s+)?seasons?\s+(?:of|over)\s+(.+?)(?:\s+of\s+(\pL.*))?$`)

// readSlot reads what a slot for a screw has besides the keys of every cut.
func (r *planReader) readSlot(f *fields, in joinery.Side) *joinery.ScrewSlot {
	before := len(r.faults)
	s := joinery.ScrewSlot{Centre: readCentre(f)}
	if text, n, ok := f.scalar("along"); ok {
		s.Along, _ = r.dimension(n, text)
	}
	s.Screw, s.Head, s.HeadDepth = f.positive("screw"), f.positive("head"), f.positive("head depth")
	s.Move = r.readMove(f)
	if len(r.faults) > before {
		return nil
	}
	return &s
}

// readMove reads how far a screw moves: "seasons of 10", from the fixed line,
// "seasons of 10 of black cherry", or the whole movement as a length.
func (r *planReader) readMove(f *fields) joinery.ScrewMove {
	text, n, ok := f.scalar("move")
	if !ok {
		return joinery.ScrewMove{}
	}
	if m := movesText.FindStringSubmatch(text); m != nil {
		move := joinery.ScrewMove{Climate: r.plan.Climate}
		move.From, ok = r.length(n, m[1])
		if ok && move.From == 0 {
			r.fault(n, "write how far the screw is from the line on which the board is fixed, such as "+f.example("move"), "on the fixed line nothing moves: that screw needs no slot")
		}
		if m[2] != "" {
			wood := r.woodNamed(n, strings.TrimSpace(m[2]), joinery.Wood{})
			move.Board = &wood
		}
		return move
	}
	if strings.Contains(strings.ToLower(text), "season") {
		r.fault(n, "write "+f.example("move")+", with your own distance", "%s does not say how far the screw is from the line on which the board is fixed", quoted(text))
		return joinery.ScrewMove{}
	}
	whole := f.positive("move")
	return joinery.ScrewMove{Whole: whole}
}
