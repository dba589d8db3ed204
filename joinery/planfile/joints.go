package planfile

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planfile/where"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

const jointExample = "- mortise and tenon: seat rail"

// jointWish is a joint as the maker wrote it, and what came of it.
type jointWish struct {
	kind   *joint.Kind
	word   string // the kind, as it was written
	name   string
	f      *yamlfile.Fields
	at     *yaml.Node // the name
	ends   []spotRef
	into   []spotRef
	words  joint.Words
	places []joint.Place // one, or one for each of a repeat
	repeat *repeat
	fence  joinery.Fencing
	tool   joinery.Cut // what the receiving half is made with, and how it is started
	note   string
	nodes  map[string]*yaml.Node // values inside other words: "place front"

	met    []joint.Met
	used   map[joint.Spot]int
	broken bool // it is at fault and makes no cuts
}

// readJoints reads the joints and finds the pieces they name. Those with a fault
// are left out, so that nothing else is faulted for them.
func (r *planReader) readJoints(f *yamlfile.Fields) {
	if !f.Written("joints") {
		return
	}
	for _, n := range f.Entries("joints", "joint", jointExample) {
		if r.over() {
			return
		}
		before := len(r.Faults)
		switch j := r.readJoint(n); {
		case j == nil:
		case len(r.Faults) == before && r.fits:
			r.joints = append(r.joints, j)
		default:
			r.lost = append(r.lost, j.name)
		}
	}
}

func (r *planReader) readJoint(n *yaml.Node) *jointWish {
	if !r.Mapping(n, "a joint begins with its kind and name", "write "+jointExample+", and what goes into what below") {
		return nil
	}
	kind, key := r.jointKind(n)
	if kind == nil {
		return nil
	}
	what := key
	if value := yamlfile.ValueOf(n, key); value.Kind == yaml.ScalarNode && !yamlfile.Null(value) {
		what = key + " " + yamlfile.Quoted(value.Value)
	}
	j := &jointWish{kind: kind, word: key, f: r.FieldsOf(n, what, kind.Keys(), key), nodes: map[string]*yaml.Node{}}
	j.f.Must(key)
	j.at = j.f.Value(key)
	j.name = j.f.Name(key)
	j.f.Need(slices.Concat([]string{kind.Half, "into", "place"}, kind.Needs)...)
	j.ends = r.readSpots(j.f, kind.Half, !kind.Flat, nil)
	j.into = r.readSpots(j.f, "into", true, j.ends)
	r.readJointWords(j)
	place := r.readPlace(j)
	if j.f.Written("repeat") {
		j.repeat = r.readRepeat(j.f)
		r.repeatPlace(j, place)
	} else {
		j.places = []joint.Place{place}
	}
	j.fence = where.Fence(j.f)
	r.readBy(j.f, &j.tool)
	if j.f.Has("note") {
		j.note = j.f.Text("note", yamlfile.LongestNote)
	}
	return j
}

// jointKind finds the key that is a kind of joint; nil where it is a fault.
func (r *planReader) jointKind(n *yaml.Node) (*joint.Kind, string) {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if k := joint.KindNamed(n.Content[i].Value); k != nil {
			return k, n.Content[i].Value
		}
	}
	if len(n.Content) == 0 {
		r.Fault(n, "write "+jointExample, "this joint is empty")
		return nil, ""
	}
	var names, all []string
	for _, k := range joint.Kinds {
		names = append(names, k.Name)
		all = append(append(all, k.Name), k.Also...)
	}
	first := n.Content[0]
	remedy := fmt.Sprintf("begin it with %s and a name, such as %s", plantext.List(names, "or"), jointExample)
	if near := plantext.Nearest(first.Value, all); near != "" {
		remedy = "write " + near
	} else if joinery.KindNamed(first.Value) != nil {
		remedy = "a " + first.Value + " is one cut and belongs under cuts; " + remedy
	}
	r.Fault(first, remedy, "%s is no kind of joint", yamlfile.Quoted(first.Value))
	return nil, ""
}

// jointFault adds what package joint found wrong, at the word that was written.
func (r *planReader) jointFault(j *jointWish, f joint.Fault) {
	j.broken = true
	r.lost = append(r.lost, j.name)
	at := r.Place(j.at)
	for _, word := range f.Words {
		if p, ok := r.jointPlace(j, word); ok {
			at = p
			break
		}
	}
	r.Add(plantext.Fault{Place: at, Remedy: f.Remedy,
		Problem: fmt.Sprintf("%s %s: ", j.kind, yamlfile.Quoted(j.name)) + f.Problem})
}

// jointPlace is where a word of a joint was written.
func (r *planReader) jointPlace(j *jointWish, word string) (plantext.Place, bool) {
	if n := j.nodes[word]; n != nil {
		return r.Place(n), true
	}
	var number int
	if _, err := fmt.Sscanf(word, "into %d", &number); err == nil && number < len(j.into) {
		return j.into[number].at, true
	}
	if n := j.f.Value(word); n != nil {
		return r.Place(n), true
	}
	return plantext.Place{}, false
}
