package page_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/page"
	"fencecard/output/page/browser"
)

// askedFor are questions of one run.
func askedFor(number string) map[string]page.Questions {
	return map[string]page.Questions{number: {
		Table: []page.Question{{Name: "near", Words: "fence face to the near edge of the bit", Unit: "in"}, {Name: "far", Words: "fence face to the far edge of the bit", Unit: "in"}},
		Cut:   []page.Question{{Name: "depth", Words: "depth, from the back", Unit: "in"}},
	}}
}

// focusSeen says of where the keyboard is whether it has an outline and nothing lies
// over it.
const focusSeen = `(function () {
	const e = document.activeElement;
	const b = e.getBoundingClientRect();
	const over = document.elementFromPoint(b.left + b.width / 2, b.top + b.height / 2);
	return getComputedStyle(e).outlineStyle + (over && (e.contains(over) || over.contains(e)) ? "" : " under " + (over ? over.className : "nothing"));
})()`

// Without a pointer: from the run sheet to a tick, to the next run, to a try and its
// answer, and back.
func TestKeyboard(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{Questions: askedFor("1.2")})
	for _, size := range screens {
		k.set(func() { k.came, k.known = nil, map[string]bool{} })
		b := browser.Open(t, size.width, size.height)
		b.Before(clock)
		b.Go(k.at)
		b.Until("document.querySelector('#next').textContent.includes('run 1.1') && bench.desk.state()")
		focus := func(selector string) {
			t.Helper()
			for range 60 {
				if browser.Eval[bool](b, "document.activeElement.matches(\""+selector+"\")") {
					require.Equal(t, "solid", browser.Eval[string](b, focusSeen), "it is seen where the keyboard is: %s", selector)
					return
				}
				b.Press(browser.TabKey)
			}
			require.Fail(t, "the keyboard does not reach "+selector)
		}
		done := func(n int) { t.Helper(); b.Until(fmt.Sprintf("bench.boxes.count(bench.deck.runs).done === %d", n)) }
		focus("#next")
		b.Press(browser.Enter)
		b.Until(here + ".id === 'run-1.1'")
		assert.Equal(t, "run-1.1-head", browser.Eval[string](b, "document.activeElement.id"), "a screen reader reads on there")
		focus(".done")
		b.Press(browser.Enter)
		done(1)
		focus(".undo")
		b.Press(browser.Space)
		done(0)
		focus(".box[data-copy='2']")
		b.Press(browser.Space)
		done(1)
		b.Press(browser.Enter)
		b.Until("document.querySelector('#told').textContent.includes('Press again')")
		b.Press(browser.Enter)
		done(0)
		focus(".box[data-copy='2']")
		b.Press(browser.Space)
		done(1)
		browser.Eval[any](b, "ahead += 700") // as long as a finger trembles
		focus(".done")                       // of the first piece, after which this height of the run is done
		b.Press(browser.Enter)
		b.Until(here + ".id === 'run-1.2'")
		done(2)
		focus("a[href^='#try-']")
		b.Press(browser.Enter)
		b.Until(here + ".id === 'try-1.2'")
		focus("section.here input[name=near]")
		b.Press("1/2")
		focus("section.here .keypad button[data-key='3']")
		focus("section.here .keypad .ask")
		b.Press(browser.Enter)
		b.Until("document.querySelector('section.here .answer b')")
		focus("#up")
		b.Press(browser.Enter)
		b.Until(here + ".id === 'run-1.2'")
		focus("section.here .back")
		b.Press(browser.Enter)
		b.Until(here + ".id === 'run-1.1'")
	}
	assert.Contains(t, k.tried[0], "near=1%2F2")
}

// controls are the roles of what can be pressed or filled in.
var controls = []string{"button", "link", "textbox", "radio", "checkbox", "DisclosureTriangle", "combobox"}

// What a screen reader is told of every part: each control has a role and a name of
// its own, each part is a region named by its heading, each drawing says its words.
func TestForAScreenReader(t *testing.T) {
	t.Parallel()
	d := deckOf(t, examples.BootBench)
	k := openDesk(t, d, page.About{Questions: askedFor("3.1"), Plan: "/plan"})
	b := browser.Open(t, 360, 640)
	b.Go(k.at)
	b.Until("bench.desk.state()")
	for part, heading := range map[string]string{
		"sheet": "Boot bench", "setup-3": "SETUP 3", "run-3.1": "RUN 3.1 A", "try-3.1": "TRY run 3.1", "print": "Print",
	} {
		browser.Eval[any](b, fmt.Sprintf("bench.parts.go(%q)", part))
		b.Until(fmt.Sprintf("document.querySelector('section.here').id === %q", part))
		roles := map[string]int{}
		var headings, regions, words []string
		for _, n := range b.Accessible() {
			roles[n.Role]++
			if slices.Contains(controls, n.Role) {
				assert.NotEmpty(t, strings.TrimSpace(n.Name), "%s: a %s without a name", part, n.Role)
			}
			switch n.Role {
			case "heading":
				headings = append(headings, n.Name)
			case "region":
				regions = append(regions, n.Name)
			case "StaticText":
				words = append(words, n.Name)
			}
		}
		assert.Equal(t, heading, headings[0], part)
		assert.Equal(t, []string{heading}, regions, part)
		assert.Equal(t, 1, roles["main"], part)
		assert.GreaterOrEqual(t, roles["status"], 1, "%s: what is said aloud when it changes", part)
		all := strings.Join(words, " ")
		want := map[string]string{"sheet": "Bits to lay out", "setup-3": "UNPLUG.", "run-3.1": "FENCE", "try-3.1": "near edge", "print": "On paper"}[part]
		assert.Contains(t, all, want, "%s: the words of its drawings", part)
	}
	assert.Equal(t, "height 1, piece 1: not done", browser.Eval[string](b, `document.querySelector("#run-3\\.1 .box") ? document.querySelector("#run-3\\.1 .box").getAttribute("aria-label") : ""`))
}

// contrasts are the texts of the part that is shown of which the letters and what lies
// behind them are too alike, by the formula of WCAG 2.2 (W3C, 2023), relative
// luminance and contrast ratio; the least for text is its success criterion 1.4.3.
const contrasts = `(function () {
	function channels(c) { return (c.match(/[\d.]+/g) || []).map(Number); }
	function seen(c) { const p = channels(c); return p.length >= 3 && (p.length < 4 || p[3] > 0); }
	function light(c) {
		const p = channels(c).slice(0, 3).map(function (v) { v /= 255; return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4); });
		return 0.2126 * p[0] + 0.7152 * p[1] + 0.0722 * p[2];
	}
	function behind(e) {
		if (e.ownerSVGElement) {
			const b = e.getBoundingClientRect();
			let under = "";
			for (const shape of e.ownerSVGElement.querySelectorAll("rect, path, circle, polygon, text")) {
				if (shape === e) { break; }
				if (shape.tagName === "text") { continue; }
				const at = new DOMPoint(b.left + b.width / 2, b.top + b.height / 2).matrixTransform(shape.getScreenCTM().inverse());
				const fill = getComputedStyle(shape).fill;
				if (seen(fill) && shape.isPointInFill(at)) { under = fill; }
			}
			if (under) { return under; }
			e = e.ownerSVGElement;
		}
		for (; e; e = e.parentElement) {
			const c = getComputedStyle(e).backgroundColor;
			if (seen(c)) { return c; }
		}
		return "rgb(255, 255, 255)";
	}
	let texts = 0;
	const poor = [];
	for (const e of document.querySelectorAll("body *")) {
		if (!e.checkVisibility({ visibilityProperty: true }) || !Array.from(e.childNodes).some(function (n) { return n.nodeType === 3 && n.data.trim(); })) { continue; }
		const s = getComputedStyle(e);
		const letters = e.ownerSVGElement ? (e.tagName === "tspan" ? getComputedStyle(e).fill : s.fill) : s.color;
		const a = light(letters);
		const b = light(behind(e));
		texts++;
		const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
		if (ratio < 4.5) { poor.push(ratio.toFixed(1) + " " + letters + " on " + behind(e) + ": " + e.textContent.trim().slice(0, 40)); }
	}
	return { Texts: texts, Poor: poor };
})()`

func TestContrast(t *testing.T) {
	t.Parallel()
	b := browser.Open(t, 360, 640)
	b.Go(fileOf(t, deckOf(t, examples.BootBench), page.About{Questions: askedFor("3.1")}))
	b.Until(here)
	browser.Eval[any](b, "document.querySelectorAll('details').forEach(function (d) { d.open = true; })")
	for _, part := range []string{"sheet", "setup-3", "run-3.1", "run-10.1", "try-3.1", "print"} {
		browser.Eval[any](b, fmt.Sprintf("bench.parts.go(%q)", part))
		b.Until(fmt.Sprintf("document.querySelector('section.here').id === %q", part))
		found := browser.Eval[struct {
			Texts int
			Poor  []string
		}](b, contrasts)
		assert.Greater(t, found.Texts, 5, part)
		assert.Empty(t, found.Poor, part)
	}
}

// Nothing on the page moves by itself, whether or not somebody asked for that.
func TestNothingMoves(t *testing.T) {
	t.Parallel()
	for _, wish := range []string{"no-preference", "reduce"} {
		b := browser.Open(t, 360, 640)
		b.Prefer("prefers-reduced-motion", wish)
		b.Go(fileOf(t, deckOf(t, []byte(twoLegs)), page.About{}) + "#run-1.1")
		b.Until(is("open"))
		assert.Equal(t, wish == "reduce", browser.Eval[bool](b, "matchMedia('(prefers-reduced-motion: reduce)').matches"))
		b.Tap("section.here .done")
		b.Until("bench.boxes.count(bench.deck.runs).done === 1")
		assert.Zero(t, browser.Eval[int](b, `Array.from(document.querySelectorAll("*")).filter(function (e) {
			const s = getComputedStyle(e);
			return s.transitionDuration !== "0s" || s.animationName !== "none" || s.scrollBehavior !== "auto";
		}).length + document.getAnimations().length`))
	}
}
