package piecelist_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/piecelist"
	"fencecard/joinery/planfile"
	"fencecard/joinery/plantext"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const gallery = "../../testdata/piecelists"

// lists are the lists of the gallery, each a file as an office program wrote it.
func lists(t testing.TB) []string {
	files, err := filepath.Glob(filepath.Join(gallery, "*.csv"))
	require.NoError(t, err)
	require.Greater(t, len(files), 50)
	return files
}

// told is what a maker is told of a list who cannot be asked: its faults, or the
// plan.
func told(list *piecelist.List, questions []piecelist.Question, err error) string {
	var faults plantext.Faults
	if err != nil && !errors.As(err, &faults) {
		return err.Error()
	}
	for _, q := range questions {
		faults = append(faults, q.Fault())
	}
	if faults != nil {
		return faults.Err().Error() + "\n"
	}
	return string(list.Plan())
}

// TestGallery reads every list without an answer and with every default, and
// holds what comes out against the text beside it.
func TestGallery(t *testing.T) {
	plans := 0
	for _, file := range lists(t) {
		name := filepath.Base(file)
		t.Run(strings.TrimSuffix(name, ".csv"), func(t *testing.T) {
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			got := "WITHOUT AN ANSWER\n\n" + told(piecelist.Read(name, data, piecelist.Options{}))
			list, questions, err := piecelist.Read(name, data, piecelist.Options{Defaults: true})
			got += "\nWITH EVERY DEFAULT\n\n" + told(list, questions, err)
			golden(t, strings.TrimSuffix(file, ".csv")+".txt", got)
			if list != nil {
				plans++
				checkPlan(t, list)
			}
		})
	}
	assert.Greater(t, plans, 30)
}

// checkPlan holds that the plan of a list is read, and says what the list says.
func checkPlan(t testing.TB, list *piecelist.List) *joinery.Plan {
	text := list.Plan()
	plan, err := planfile.Read("plan.yaml", text, nil)
	require.NoError(t, err, "%s", text)
	require.Equal(t, list.Unit, plan.Unit)
	i := 0
	for _, p := range list.Pieces {
		count := 0
		for _, c := range p.Copies {
			got := plan.Pieces[i]
			require.Equal(t, c.Name, got.Name)
			require.Equal(t, p.Size(), got.Size, c.Name)
			require.Equal(t, p.Lies.Length, got.Grain, c.Name)
			require.Equal(t, p.Wood, got.Wood.Name, c.Name)
			var across joinery.Flips
			for _, d := range c.Across {
				across = across.Flipped(d)
			}
			require.Equal(t, across, got.Across, c.Name)
			count += got.Count
			i++
		}
		require.Equal(t, p.Count, count)
	}
	require.Len(t, plan.Pieces, i)
	return plan
}

// Every list of the gallery becomes a plan once its questions are answered, as
// a maker would who reads what is offered.
func TestEveryQuestionCanBeAnswered(t *testing.T) {
	for _, file := range lists(t) {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		o := piecelist.Options{Answers: map[string]string{}}
		list, questions, err := piecelist.Read(filepath.Base(file), data, o)
		for round := 0; err == nil && list == nil; round++ {
			require.Less(t, round, 6, "%s still asks %v", file, questions)
			for _, q := range questions {
				o.Answers[q.Key] = answerTo(q)
			}
			list, questions, err = piecelist.Read(filepath.Base(file), data, o)
		}
		if err == nil {
			checkPlan(t, list)
		}
	}
}

func answerTo(q piecelist.Question) string {
	switch {
	case q.Default != "":
		return q.Default
	case strings.HasPrefix(q.Key, "lies"):
		return "length left-right, thickness front-back"
	case strings.HasPrefix(q.Key, "wood"):
		return "none"
	case strings.HasPrefix(q.Key, "piece"), strings.HasPrefix(q.Key, "name"):
		return "piece of " + q.Key
	case q.Choices != nil:
		return q.Choices[0]
	}
	return "2"
}

// golden compares a text with a file, or writes the file where the environment
// variable FENCECARD_GOLDEN is "update".
func golden(t *testing.T, file, got string) {
	t.Helper()
	if os.Getenv("FENCECARD_GOLDEN") == "update" {
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), got)
}

// FuzzList holds, for any bytes: a plan that can be read, or faults and questions
// with a place and a way out, the same each time.
func FuzzList(f *testing.F) {
	for _, file := range lists(f) {
		data, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(data, true)
		f.Add(data, false)
	}
	f.Fuzz(func(t *testing.T, data []byte, defaults bool) {
		o := piecelist.Options{Defaults: defaults}
		list, questions, err := piecelist.Read("list.csv", data, o)
		again, sameQuestions, sameErr := piecelist.Read("list.csv", data, o)
		assert.Equal(t, fmt.Sprint(err), fmt.Sprint(sameErr))
		assert.Equal(t, questions, sameQuestions)
		var faults plantext.Faults
		if err != nil {
			require.ErrorAs(t, err, &faults)
		}
		for _, q := range questions {
			assert.NotEmpty(t, q.Key)
			assert.NotEmpty(t, q.About)
			assert.NotContains(t, q.Asks, "\n")
			faults = append(faults, q.Fault())
		}
		for _, fault := range faults {
			assert.NotEmpty(t, fault.Problem)
			assert.NotEmpty(t, fault.Remedy, fault.Problem)
			assert.LessOrEqual(t, fault.Column, len([]rune(fault.Source))+1, fault.Problem)
		}
		assert.NotContains(t, faults.Error(), "\x1b")
		switch {
		case list == nil:
			assert.NotEmpty(t, faults)
		default:
			assert.Empty(t, faults)
			assert.Equal(t, string(list.Plan()), string(again.Plan()))
			differences, _, err := piecelist.Compare("list.csv", data, o, checkPlan(t, list))
			require.NoError(t, err)
			assert.Empty(t, differences)
		}
	})
}

// The two columns of our own are read under the heads that they had before, too, and
// under the words of the trade.
func TestOwnColumnsByAnyHead(t *testing.T) {
	const list = "name,qty,length,width,thickness,wood,%s,%s\n" +
		"bracket,2,9,3,3/4,white oak,\"length front-back, thickness left-right\",pair left right\n"
	read := func(lies, pairs string) string {
		l, questions, err := piecelist.Read("list.csv", fmt.Appendf(nil, list, lies, pairs), piecelist.Options{})
		require.NoError(t, err)
		require.Empty(t, questions, "%s, %s", lies, pairs)
		return string(l.Plan())
	}
	want := read("orientation", "pairs")
	assert.Contains(t, want, "mirror: {of: left bracket, across: left-right}")
	for _, heads := range [][2]string{{"lies", "as"}, {"Sits", "Handed"}, {"way it lies", "made as"}} {
		assert.Equal(t, want, read(heads[0], heads[1]))
	}
}
