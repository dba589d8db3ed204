package proof_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shared is all that the proof may take from the packages that make the runs:
// the deck's types, and the rule of the shop that says how deep one pass may go.
// What a setup book knows, and what a sheet brings to a mark proves nothing: whoever measures a table asks.
var shared = map[string][]string{
	"deck": {
		"Deck", "Setup", "Run", "Step", "Mark", "Fence", "Changes", "Warning",
		"Kept", "Nibble", "Hole", "Screw", "Pivot", "Begin", "FeedIn", "Drop", "End", "RunOut", "Lift",
		"Guide", "ByLine", "ByLead", "ByTail",
	},
	"ladder": {"Cap", "CapFor"},
}

func TestProofSharesNoCodeWithTheCards(t *testing.T) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	measuring, err := filepath.Glob("attable/*.go")
	require.NoError(t, err)
	require.NotEmpty(t, measuring)
	files = append(files, measuring...)
	seen := 0
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok {
				if called, ok := call.Fun.(*ast.SelectorExpr); ok {
					// The cross product and the turned channel are the maker's own.
					assert.NotContains(t, []string{"Cross", "Reversed"}, called.Sel.Name, name)
				}
			}
			selector, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if from, ok := selector.X.(*ast.Ident); ok && from.Obj == nil && shared[from.Name] != nil {
				seen++
				assert.True(t, slices.Contains(shared[from.Name], selector.Sel.Name), "%s uses %s.%s", name, from.Name, selector.Sel.Name)
			}
			return true
		})
	}
	assert.NotZero(t, seen)
}
