package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/page/browser"
)

// A telephone or a tablet at the table, in a browser, at a run of the plan of a leg.
func tablet(t *testing.T, address string) *browser.Tab {
	t.Helper()
	b := browser.Open(t, 360, 640)
	b.Go(address)
	b.Until("typeof bench === 'object' && bench.desk.state()")
	return b
}

// legs is a plan of so many legs.
func legs(t *testing.T, count int) (plan string) {
	t.Helper()
	plan = filepath.Join(t.TempDir(), "legs.yaml")
	many := strings.Replace(legPlan, "- piece: leg\n", fmt.Sprintf("- piece: leg\n    count: %d\n", count), 1)
	require.Contains(t, many, "count:")
	require.NoError(t, os.WriteFile(plan, []byte(many), 0o666))
	return plan
}

// box is the box of a copy of the leg in its first run.
func box(copy int) string {
	return fmt.Sprintf("section.here .box[data-height='1'][data-copy='%d']", copy)
}

func boxIs(copy int, state string) string {
	return fmt.Sprintf(`document.querySelector("%s")?.classList.contains("is-%s")`, box(copy), state)
}

// letIn is the address that lets the next device in, at the latest start.
func (s *served) letIn() string {
	s.t.Helper()
	for range 6000 {
		if all := regexp.MustCompile(`http://127\.0\.0\.2:\d+/in/[A-Z2-7]{26}\n`).FindAllString(s.told.String(), -1); len(all) > 0 {
			return all[len(all)-1][:len(all[len(all)-1])-1]
		}
		time.Sleep(10 * time.Millisecond)
	}
	require.FailNow(s.t, "no device is let in", s.told.String())
	return ""
}

// ticksOnce counts the ticks in the file, each of which must be there once.
func ticksOnce(t *testing.T, file string) (sum int) {
	t.Helper()
	for device, lines := range countedTicks(t, file) {
		for n, times := range lines {
			require.Equal(t, 1, times, "%s %d", device, n)
		}
		sum += len(lines)
	}
	return sum
}

// What TRY answers is seen: both of its buttons, a right measure and a wrong one.
func TestAnswersAreSeen(t *testing.T) {
	book, _ := aBook(t)
	s := serve(t, legs(t, 1), book)
	b := tablet(t, s.address+"run/1.1")
	b.Go(s.address + "try/1.1")
	b.Until("document.querySelector('section.here form input:not([type=hidden])')")
	forms := browser.Eval[int](b, "document.querySelectorAll('section.here form').length")
	require.Equal(t, 2, forms)
	for form := range forms {
		for _, measured := range []string{"1/4", "1/2"} {
			browser.Eval[any](b, fmt.Sprintf(`(function (form) {
				form.querySelector("input:not([type=hidden])").value = "%s";
				form.requestSubmit();
			})(document.querySelectorAll("section.here form")[%d])`, measured, form))
			b.Until(fmt.Sprintf(`(function (answer) {
				return answer && answer.textContent.length > 20 && Array.from(answer.querySelectorAll("p")).every((p) => p.checkVisibility() && p.getBoundingClientRect().height > 10);
			})(document.querySelectorAll("section.here form")[%d].querySelector(".answer"))`, form))
		}
	}
}

// Two at once, the desk and a tablet that was let in: each sees what the other ticks.
func TestTwoTabletsAtOnce(t *testing.T) {
	if runtime.GOOS == "darwin" {
		t.Skip("it has one loopback address")
	}
	plan := legs(t, 4)
	book, file := aBook(t)
	s := serve(t, plan, book, "--share=127.0.0.2")
	desk := tablet(t, s.address+"run/1.1")
	shared := tablet(t, s.letIn())
	assert.Equal(t, "run-1.1", browser.Eval[string](shared, `bench.parts.go("run-1.1"), document.querySelector("section.here").id`))
	for copy := range 4 {
		if copy%2 == 0 {
			desk.Tap(box(copy + 1))
		} else {
			shared.Tap(box(copy + 1))
		}
	}
	for copy := range 4 {
		desk.Until(boxIs(copy+1, "done"))
		shared.Until(boxIs(copy+1, "done"))
	}
	shared.Hold(box(1), time.Second) // what the desk ticked
	desk.Until(boxIs(1, "open"))
	assert.Equal(t, 5, ticksOnce(t, file))
}

// The program is killed under both; both work on, and when it is back what they ticked
// arrives once: from the desk by itself, from the tablet when it was let in anew.
func TestTheProgramIsKilledUnderTablets(t *testing.T) {
	if runtime.GOOS == "darwin" {
		t.Skip("it has one loopback address")
	}
	plan := legs(t, 4)
	book, file := aBook(t)
	s := serve(t, plan, book, "--share=127.0.0.2")
	desk := tablet(t, s.address+"run/1.1")
	shared := tablet(t, s.letIn())
	browser.Eval[any](shared, `bench.parts.go("run-1.1")`)
	desk.Tap(box(1))
	shared.Until(boxIs(1, "done"))
	require.NoError(t, s.cmd.Process.Kill())
	_ = s.cmd.Wait()

	desk.Until("bench.desk.gone()")
	shared.Until("bench.desk.gone()")
	desk.Tap(box(2))
	desk.Until(boxIs(2, "wait"))
	shared.Tap("section.here .done")
	shared.Until("bench.queue.length() === 1")
	shared.Tap("#up")
	shared.Until("document.querySelector('section.here').id === 'setup-1'")
	assert.Contains(t, shared.Text("section.here .row .state"), "1 not stored yet")

	s = serve(t, plan, book, "--share=127.0.0.2", "--port", s.port())
	desk.Until(boxIs(2, "done") + " && bench.queue.length() === 0")
	shared.Until("document.querySelector('#told').textContent.includes('scan the code at the desk')")
	assert.Equal(t, int64(1), browser.Eval[int64](shared, "bench.queue.length()"))
	shared.Go(s.letIn())
	shared.Until("typeof bench === 'object' && bench.desk.state() && bench.queue.length() === 0")
	browser.Eval[any](shared, `bench.parts.go("run-1.1")`)
	shared.Until(boxIs(2, "done"))
	assert.Equal(t, 3, ticksOnce(t, file))
	desk.Reload()
	desk.Until(boxIs(1, "done") + " && " + boxIs(2, "done"))
}

// workOn ticks one box after another of the legs' first run, as long as the page is
// open and told to.
const workOn = `var made = 0, working = setInterval(function () {
	const run = bench.deck.runs[0];
	bench.desk.tick(bench.boxes.box(run, made % run.rungs.length + 1, Math.floor(made / run.rungs.length) + 1), true);
	made++;
}, 10)`

// shownDone counts the boxes that the page shows as done.
const shownDone = `bench.boxes.count(bench.deck.runs).done`

// A page ticks while the program is killed at random moments and started again. What
// it ever showed as done is in the file, once, and at the end all that was ticked is.
func TestKilledUnderAPage(t *testing.T) {
	kills := killsOr(6)
	plan := legs(t, 2000)
	book, file := aBook(t)
	random := rand.New(rand.NewPCG(18, 2))
	s := serve(t, plan, book, "--search=0")
	b := tablet(t, s.address+"run/1.1")
	browser.Eval[any](b, workOn)
	for range kills {
		b.Until("!bench.desk.gone()")
		time.Sleep(time.Duration(random.Int64N(int64(120 * time.Millisecond))))
		require.NoError(t, s.cmd.Process.Kill())
		_ = s.cmd.Wait()
		b.Until("bench.desk.gone()")
		require.LessOrEqual(t, browser.Eval[int](b, shownDone), ticksOnce(t, file), "shown as done and not stored")
		s = serve(t, plan, book, "--search=0", "--port", s.port())
	}
	made := browser.Eval[int](b, "clearInterval(working), made")
	b.Until("bench.queue.length() === 0")
	assert.Equal(t, made, ticksOnce(t, file))
	b.Until(fmt.Sprintf("%s === %d", shownDone, made))
	t.Logf("%d kills, %d ticks", kills, made)
}

// A tablet sleeps: it runs nothing while another ticks and the program goes and comes.
// Awake it shows how things are, and hands over what it had ticked before.
func TestATabletSleeps(t *testing.T) {
	plan := legs(t, 4)
	book, file := aBook(t)
	s := serve(t, plan, book)
	sleeper, other := tablet(t, s.address+"run/1.1"), tablet(t, s.address+"run/1.1")
	require.NoError(t, s.cmd.Process.Kill())
	_ = s.cmd.Wait()
	sleeper.Until("bench.desk.gone()")
	sleeper.Tap(box(2))
	sleeper.Until(boxIs(2, "wait"))
	sleeper.Sleep()
	s = serve(t, plan, book, "--port", s.port())
	other.Until("!bench.desk.gone()")
	other.Tap(box(3))
	other.Until(boxIs(3, "done"))
	sleeper.Wake()
	sleeper.Until(boxIs(3, "done"))
	sleeper.Until(boxIs(2, "done"))
	other.Until(boxIs(2, "done"))
	assert.Equal(t, 2, ticksOnce(t, file))
}
