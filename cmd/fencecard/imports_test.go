package main

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Data flows one way: plan text, joinery, setup, output, commands. What a
// package must not depend on, directly or not.
var forbidden = map[string][]string{
	"fencecard/joinery":           {"fencecard/setup", "fencecard/output", "fencecard/cmd", "go.yaml.in/yaml", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf"},
	"fencecard/joinery/planfile":  {"fencecard/setup", "fencecard/output", "fencecard/cmd", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf"},
	"fencecard/joinery/piecelist": {"fencecard/setup", "fencecard/output", "fencecard/cmd", "fencecard/joinery/planfile", "go.yaml.in/yaml", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf"},
	"fencecard/setup":             {"fencecard/output", "fencecard/cmd", "fencecard/joinery/planfile", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf"},
	"fencecard/setup/deck":        {"fencecard/setup/remark", "fencecard/setup/whatif", "fencecard/setup/proof", "fencecard/setup/solid", "fencecard/output", "fencecard/joinery/planfile"},
	"fencecard/setup/remark":      {"fencecard/setup/proof", "fencecard/setup/whatif", "fencecard/output", "fencecard/joinery/planfile"},
	"fencecard/setup/proof":       {"fencecard/setup/remark", "fencecard/setup/whatif", "fencecard/output", "fencecard/joinery/planfile", "github.com/spf13/cobra"},
	"fencecard/setup/book":        {"fencecard/output", "fencecard/cmd", "fencecard/joinery/planfile", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf", "github.com/gofrs/flock"},
	"fencecard/setup/search":      {"fencecard/output", "fencecard/cmd", "fencecard/joinery/planfile"},
	"fencecard/output":            {"fencecard/cmd", "fencecard/joinery/planfile", "github.com/spf13/cobra"},
}

func TestImportsFlowOneWay(t *testing.T) {
	for pkg, banned := range forbidden {
		out, err := exec.Command("go", "list", "-deps", pkg).Output()
		require.NoError(t, err, pkg)
		for dep := range strings.FieldsSeq(string(out)) {
			for _, b := range banned {
				assert.False(t, strings.HasPrefix(dep, b), "%s depends on %s", pkg, dep)
			}
		}
	}
}

// The program never goes to a network and starts no other program: nothing of
// ours imports what does, and what could is not even linked in. (The flags of
// the command line know network addresses, so net itself is there.)
func TestNoNetwork(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", `{{.ImportPath}} {{join .Imports " "}}`, ".").Output()
	require.NoError(t, err)
	for line := range strings.Lines(string(out)) {
		pkg, imports, _ := strings.Cut(strings.TrimSpace(line), " ")
		assert.NotContains(t, []string{"net/http", "crypto/tls", "os/exec", "plugin"}, pkg)
		if !strings.HasPrefix(pkg, "fencecard/") {
			continue
		}
		for used := range strings.FieldsSeq(imports) {
			assert.NotContains(t, []string{"net", "unsafe", "syscall"}, used, pkg)
		}
	}
}
