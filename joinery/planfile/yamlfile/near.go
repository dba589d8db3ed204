package yamlfile

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery/plantext"
)

// curlyQuotes takes out quotes that YAML does not know as such.
var curlyQuotes = strings.NewReplacer("“", "", "”", "")

// NearName is the remedy for an unknown name: the near one, or all there are.
func NearName(what, name string, names []string) string {
	const few = 6
	near := plantext.Nearest(name, names)
	switch {
	case curlyQuotes.Replace(name) != name && slices.Contains(names, curlyQuotes.Replace(name)):
		return "write " + curlyQuotes.Replace(name) + " without the curly quotes; they are letters like any other"
	case near != "" && curlyQuotes.Replace(near) != near:
		return "take the curly quotes out of " + near + "; they are letters like any other"
	case near != "":
		return "write " + near
	case len(names) == 0:
		return "there is no other " + what + " it could be"
	case len(names) > few:
		return fmt.Sprintf("the %ss are %s and %d more", what, strings.Join(names[:few], ", "), len(names)-few)
	case len(names) == 1:
		return fmt.Sprintf("the only %s it could be is %s", what, names[0])
	}
	return fmt.Sprintf("the %ss are %s", what, plantext.List(names, "and"))
}
