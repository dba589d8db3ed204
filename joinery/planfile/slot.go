package planfile

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/where"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/timber"
)

var movesText = pattern.New(`(?i)^(?:the\s+)?seasons?\s+(?:of|over)\s+(.+?)(?:\s+of\s+(\pL.*))?$`)

// readSlot reads what a slot for a screw has besides the keys of every cut.
func (r *planReader) readSlot(f *yamlfile.Fields, in joinery.Side) *joinery.ScrewSlot {
	before := len(r.Faults)
	s := joinery.ScrewSlot{Centre: where.Centre(f)}
	if text, n, ok := f.Scalar("along"); ok {
		s.Along, _ = r.Dimension(n, text)
	}
	s.Screw, s.Head, s.HeadDepth = f.Positive("screw"), f.Positive("head"), f.Positive("head depth")
	s.Move = r.readMove(f)
	if len(r.Faults) > before {
		return nil
	}
	return &s
}

// readMove reads how far a screw moves: "seasons of 10", from the fixed line,
// "seasons of 10 of black cherry", or the whole movement as a length.
func (r *planReader) readMove(f *yamlfile.Fields) timber.ScrewMove {
	text, n, ok := f.Scalar("move")
	if !ok {
		return timber.ScrewMove{}
	}
	if m := movesText.FindStringSubmatch(text); m != nil {
		move := timber.ScrewMove{Climate: r.plan.Climate}
		move.From, ok = r.Length(n, m[1])
		if ok && move.From == 0 {
			r.Fault(n, "write how far the screw is from the line on which the board is fixed, such as "+f.Example("move"), "on the fixed line nothing moves: that screw needs no slot")
		}
		if m[2] != "" {
			wood := r.woodNamed(n, strings.TrimSpace(m[2]), timber.Wood{})
			move.Board = &wood
		}
		return move
	}
	if strings.Contains(strings.ToLower(text), "season") {
		r.Fault(n, "write "+f.Example("move")+", with your own distance", "%s does not say how far the screw is from the line on which the board is fixed", yamlfile.Quoted(text))
		return timber.ScrewMove{}
	}
	whole := f.Positive("move")
	return timber.ScrewMove{Whole: whole}
}
