package planfile

import (
	"fmt"
	"strings"

	"fencecard/joinery"
)

// nearPiece is the remedy for an unknown name of a piece.
func (r *planReader) nearPiece(name string, but *blank) string {
	var names []string
	for _, b := range r.blanks {
		if b != but && b.Name != "" {
			names = append(names, b.Name)
		}
	}
	return nearName("piece", name, names)
}

// nearName is the remedy for an unknown name: the near one, or all there are.
func nearName(what, name string, names []string) string {
	const few = 6
	near := joinery.Nearest(name, names)
	switch {
	case near != "":
		return "write " + near
	case len(names) == 0:
		return "there is no other " + what + " it could be"
	case len(names) > few:
		return fmt.Sprintf("the %ss are %s and %d more", what, strings.Join(names[:few], ", "), len(names)-few)
	case len(names) == 1:
		return fmt.Sprintf("the only %s it could be is %s", what, names[0])
	}
	return fmt.Sprintf("the %ss are %s", what, joinery.List(names, "and"))
}
