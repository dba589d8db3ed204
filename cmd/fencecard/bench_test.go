package main

import (
	"bytes"
	"fmt"
	"io"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v4"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/output"
	"fencecard/output/sheets"
	"fencecard/setup"
	"fencecard/setup/proof"
)

// built builds a program into a folder of its own.
func built(b *testing.B, source string) string {
	b.Helper()
	program := filepath.Join(b.TempDir(), "program")
	out, err := exec.Command("go", "build", "-o", program, source).CombinedOutput()
	require.NoError(b, err, string(out))
	return program
}

// cpuOf runs a program and returns the processor time it took.
func cpuOf(b *testing.B, program string, args ...string) time.Duration {
	b.Helper()
	cmd := exec.Command(program, args...)
	require.NoError(b, cmd.Run())
	return cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
}

// BenchmarkStart starts the program for its help and a bare program of the same
// library, in turn, and reports how many times as long ours takes, on the clock
// and in processor time.
func BenchmarkStart(b *testing.B) {
	ours, bare := built(b, "."), built(b, "./testdata/bare")
	cpuOf(b, ours, "--help")
	cpuOf(b, bare, "--help")
	var clock, cpu [2]time.Duration
	for b.Loop() {
		for i, program := range []string{bare, ours} {
			begun := time.Now()
			cpu[i] += cpuOf(b, program, "--help")
			clock[i] += time.Since(begun)
		}
	}
	b.ReportMetric(float64(clock[1])/float64(clock[0]), "x-bare")
	b.ReportMetric(float64(cpu[1])/float64(cpu[0]), "x-bare-cpu")
	b.ReportMetric(float64(cpu[1].Microseconds())/float64(b.N)/1000, "cpu-ms/op")
	b.ReportMetric(0, "ns/op")
}

// BenchmarkExamples prints the examples as a maker does, into a PDF file.
func BenchmarkExamples(b *testing.B) {
	ours := built(b, ".")
	for name, args := range map[string][]string{"boot-bench": nil, "wall-cabinet": {"../../testdata/wall-cabinet.yaml"}} {
		b.Run(name, func(b *testing.B) {
			out := filepath.Join(b.TempDir(), "cards.pdf")
			var cpu time.Duration
			for b.Loop() {
				cpu += cpuOf(b, ours, append([]string{"cards", "--force", "--out", out}, args...)...)
			}
			b.ReportMetric(float64(cpu.Microseconds())/float64(b.N)/1000, "cpu-ms/op")
		})
	}
}

// planOfCuts writes a plan of that many cuts, ten to a piece, of all kinds and
// with some sixty setups, as a large job of cabinets has.
func planOfCuts(cuts int) []byte {
	var b strings.Builder
	b.WriteString("title: Benchmark\nunit: in\nwood: white ash\npieces:\n")
	for i := range (cuts + 9) / 10 {
		eighths := i % 12
		fmt.Fprintf(&b, `  - piece: side %d
    count: %d
    size: {left-right: 11 1/4, front-back: 3/4, top-bottom: %d}
    cuts:
`, i, 1+i%4, 30+i%7)
		for c := range 10 {
			name := fmt.Sprintf("cut %d", c)
			switch c {
			case 0:
				fmt.Fprintf(&b, "      - {groove: %s, in: front, width: 1/4, setback: %d/8 from left, depth: 1/4}\n", name, 4+eighths)
			case 1:
				fmt.Fprintf(&b, "      - {rabbet: %s, in: back, along: right, width: 3/8, depth: 3/8}\n", name)
			case 2:
				fmt.Fprintf(&b, "      - {lap: %s, in: back, at: top, length: 1 1/2, depth: 3/8}\n", name)
			case 3:
				fmt.Fprintf(&b, "      - {mortise: %s, in: left, width: 1/4, setback: 1/4 from front, span: %d to %d from top, depth: 3/4}\n", name, 3+eighths, 6+eighths)
			case 4:
				fmt.Fprintf(&b, "      - {tenon: %s, at: bottom, length: 7/8, cheeks: {front: 1/4, back: 1/4}}\n", name)
			default:
				fmt.Fprintf(&b, "      - {dado: %s, in: front, width: 3/4, setback: %d/8 from top, span: 1/2 to 11 1/4 from left, depth: 1/4}\n", name, 12+14*(c-5)+eighths%8)
			}
		}
	}
	return []byte(b.String())
}

// BenchmarkCuts times each stage of plans of 10 to 10,000 cuts. All grow with
// the plan, but for the search, which stops after two seconds. To decode is what the
// YAML library takes for the plan's text alone, the floor under all others.
func BenchmarkCuts(b *testing.B) {
	for _, cuts := range []int{10, 100, 1000, 10_000} {
		text := planOfCuts(cuts)
		read := func() *joinery.Plan {
			plan, err := planfile.Read("plan.yaml", text, nil)
			require.NoError(b, err)
			return plan
		}
		plan := read()
		deck, err := setup.MakeWith(b.Context(), plan, setup.Options{Plain: true})
		require.NoError(b, err)
		for _, stage := range []struct {
			name string
			run  func() error
		}{
			{"decode", func() error { return yaml.Unmarshal(text, new(yaml.Node)) }},
			{"read", func() error { read(); return nil }},
			{"plan", func() error { _, err := setup.MakeWith(b.Context(), plan, setup.Options{Plain: true}); return err }},
			{"search", func() error { _, err := setup.Make(plan); return err }},
			{"prove", func() error {
				claims := proof.Of(deck)
				report := proof.Check(plan, &claims)
				return report.Err()
			}},
			{"json", func() error { return output.JSON(io.Discard, deck) }},
			{"text", func() error { return output.Text(io.Discard, deck) }},
			{"pdf", func() error { return output.PDF(new(bytes.Buffer), deck, sheets.Pages{}) }},
		} {
			b.Run(fmt.Sprintf("%s/%d", stage.name, cuts), func(b *testing.B) {
				b.ReportAllocs()
				begun := cpuTime()
				for b.Loop() {
					require.NoError(b, stage.run())
				}
				b.ReportMetric(float64((cpuTime()-begun).Microseconds())/float64(b.N)/1000, "cpu-ms/op")
			})
		}
	}
}

// BenchmarkMemory prints whole decks and reports the most memory that the program
// held at once, where the system tells it.
func BenchmarkMemory(b *testing.B) {
	deck := documentKind{file: "plan.yaml", args: []string{"cards", "--force", "--out", "cards.pdf", "plan.yaml"}}
	for _, cuts := range []int{1000, 10_000} {
		b.Run(fmt.Sprint(cuts), func(b *testing.B) {
			for b.Loop() {
				most, code, said := readApart(b, deck, string(planOfCuts(cuts)))
				require.Equal(b, exitDone, code, said)
				b.ReportMetric(float64(most)/megabyte, "MB-peak")
			}
		})
	}
}
