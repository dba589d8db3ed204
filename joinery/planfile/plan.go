package planfile

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"

	"go.yaml.in/yaml/v4"
)

// ShopInPlanName is the name of a shop whose keys stand in the plan itself.
const ShopInPlanName = "the shop in the plan"

// planReader reads one plan.
type planReader struct {
	*yamlfile.File
	open  func(path string) ([]byte, error)
	plan  *joinery.Plan
	woods map[string]timber.Wood // by the name as written
	wood  timber.Wood            // for pieces that name none
	other plantext.Faults        // of a shop file
	mates []mateRef

	root   *yaml.Node
	joints []*jointWish
	lost   []string // the names of joints that are at fault

	blanks []*blank
	named  map[string]*blank // the first of each name
	// copied counts the pieces and cuts that mirrors added, and crowded tells that
	// there are more than a plan may have: nothing behind is read.
	copied  int
	crowded bool
	// doubtful tells that the shop has faults: an unknown wood may be its own.
	doubtful bool
	// nameless tells that a piece has no name that can be read: an unknown name
	// may be its.
	nameless bool
	// fits tells whether cuts can be held against their pieces: not where the
	// unit is unknown, which makes every length doubtful.
	fits bool
}

// Read reads a plan. The name is the file's, for messages. A shop that the
// plan names by path is read through open, which gets the path as written, to
// be taken from the plan's folder; where open is nil, no path is allowed, and where
// its error is [shopfile.Missing], the path that could be meant is offered. The
// error is [plantext.Faults] with every fault of the plan and its shop.
func Read(name string, data []byte, open func(path string) ([]byte, error)) (*joinery.Plan, error) {
	return newPlanReader(name, open).readAll(data)
}

// over reports whether reading stops here.
func (r *planReader) over() bool { return r.Full || r.crowded }

func newPlanReader(name string, open func(path string) ([]byte, error)) *planReader {
	return &planReader{
		File:  yamlfile.New(name, measure.Inches, measure.InchScale),
		open:  open,
		plan:  &joinery.Plan{Name: baseName(name), Climate: timber.DefaultClimate, Place: plantext.Place{File: name}},
		woods: map[string]timber.Wood{},
		named: map[string]*blank{},
		fits:  true,
	}
}

func (r *planReader) readAll(data []byte) (*joinery.Plan, error) {
	if root := r.Tree(data, "the plan", yamlfile.BeginPlan); root != nil && r.isPlan(root) {
		r.root = root
		r.read(r.Fields(root, "the plan", keys.Plan))
	}
	r.Faults = append(r.Faults, r.other...)
	if err := r.Err(); err != nil {
		return nil, err
	}
	return r.plan, nil
}

// baseName is the file's name without folder and ending.
func baseName(name string) string {
	base := filepath.Base(name)
	base = strings.TrimSuffix(base, filepath.Ext(base))
	if base == "" || base == "." || base == "-" || base == string(filepath.Separator) {
		return "plan"
	}
	return base
}

// isPlan faults a file of another kind.
func (r *planReader) isPlan(root *yaml.Node) bool {
	if !r.Mapping(root, "this is no plan", "begin with unit: in, then pieces: and below it - piece: NAME; "+yamlfile.BeginPlan) {
		return false
	}
	if yamlfile.ValueOf(root, "bits") == nil || yamlfile.ValueOf(root, "pieces") != nil {
		return true
	}
	r.Fault(root, "name it in a plan, with shop: FILE", "this is a shop file, not a plan")
	return false
}

func (r *planReader) read(f *yamlfile.Fields) {
	f.Need("unit", "pieces")
	r.readUnit(f)
	r.plan.Unit = r.Unit
	r.plan.Title = r.plan.Name
	if title := f.Name("title"); title != "" {
		r.plan.Title = title
	}
	r.readShop(f)
	r.readClimate(f)
	r.Scale = r.plan.Shop.Scale
	r.wood = r.readWood(f, timber.Wood{})
	r.readPieces(f)
}

func (r *planReader) readUnit(f *yamlfile.Fields) {
	unit, ok := f.Unit()
	r.Unit, r.Scale, r.fits = unit, measure.DefaultScale(unit), ok
}

// readWood looks up the wood a plan or piece names; without one it is the
// fallback.
func (r *planReader) readWood(f *yamlfile.Fields, fallback timber.Wood) timber.Wood {
	name := f.Name("wood")
	if name == "" {
		return fallback
	}
	return r.woodNamed(f.Value("wood"), name, fallback)
}

// woodNamed looks a wood up that a node names; the fallback with a fault where
// there is none.
func (r *planReader) woodNamed(n *yaml.Node, name string, fallback timber.Wood) timber.Wood {
	if wood, ok := r.woods[name]; ok {
		return wood
	}
	wood, near, ok := timber.FindWood(name, r.plan.Shop.Woods...)
	if !ok && r.doubtful {
		return fallback
	}
	if !ok {
		remedy := "write a name from fencecard wood, add it to woods in the shop file, or leave wood out for the shallowest passes"
		if near != "" {
			remedy = "write " + near
		}
		problem := " is no wood in the table"
		if strings.Contains(near, " or ") {
			problem = " may be more than one wood"
		}
		r.Fault(n, remedy, "%s", yamlfile.Quoted(name)+problem)
		return fallback
	}
	r.woods[name] = wood
	return wood
}

// readShop reads the shop in place or by path; without one it is the built-in
// shop.
func (r *planReader) readShop(f *yamlfile.Fields) {
	r.plan.Shop = shopfile.BuiltIn(r.Unit)
	if !f.Has("shop") {
		return
	}
	n, before := f.Value("shop"), len(r.Faults)
	defer func() { r.doubtful = len(r.Faults)+len(r.other) > before }()
	switch n.Kind {
	case yaml.MappingNode:
		r.plan.Shop = shopfile.InPlan(r.File, n, r.plan.Shop)
		r.plan.Shop.Name = ShopInPlanName
	case yaml.ScalarNode:
		r.readShopFile(n, strings.TrimSpace(n.Value))
	default:
		r.Fault(n, "write "+keys.Example("shop")+", or the keys of a shop below it", "shop is neither a file nor keys")
	}
}

func (r *planReader) readShopFile(n *yaml.Node, path string) {
	if r.open == nil {
		r.Fault(n, "write the keys of the shop in the plan", "a plan that is not read from a folder cannot name a shop file")
		return
	}
	data, err := r.open(path)
	if err != nil {
		problem := fmt.Sprintf("the shop file %s cannot be read: %v", path, err)
		if errors.Is(err, fs.ErrNotExist) {
			problem = "there is no shop file " + path
		}
		remedy := "check the path, which is taken from the plan's folder; fencecard new --shop FILE writes one to begin with"
		if none := new(shopfile.Missing); errors.As(err, &none) && none.Near != "" {
			remedy = "did you mean " + none.Near + "?"
		}
		r.Fault(n, remedy, "%s", problem)
		return
	}
	shop, err := shopfile.Read(filepath.Join(filepath.Dir(r.Name), path), data, r.Unit)
	if errors.As(err, &r.other) {
		return
	}
	shop.Name = path
	r.plan.Shop = shop
}
