package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// legBook is a setup book with the leg's one setup.
const legBook = `fencecard setup book 1

setup: leg
  kept: 2026-11-25
  scale: 1/64 in
  bit: three eighths up-cut
  kind: up-cut
  diameter: 3/8 in
  plunges: yes
  fence to near edge: 1/2 in
  heights: 13/64 in, 13/32 in, 39/64 in, 13/16 in, 1 in
  run: leg
    cut: rail
    kind: mortise
    count: 1
    wood: white ash
    size: 1 5/8 in left-right, 1 5/8 in front-back, 17 in top-bottom
    grain: top-bottom
    down: right
    to fence: front
    leads: top
    setback: 1/2 in from front
    width: 3/8 in
    depth: 1 in
    start: 1/2 in
    stop: 3 in
    heights: 13/64 in, 13/32 in, 39/64 in, 13/16 in, 1 in
    cap: 15/64 in, 5/8 of the bit's diameter in white ash
`

// inBook puts a text in the place of a part of the leg's book, which is there.
func inBook(part, text string) string {
	before, after, ok := strings.Cut(legBook, part)
	if !ok {
		panic("the book has no " + part)
	}
	return before + text + after
}

var bookRead = documentKind{file: "book.txt", args: []string{"book", "list", "--book", "book.txt"}, sound: legBook}

func hostileBooks() []hostileDocument {
	var docs []hostileDocument
	add := func(name, says string, exit int, text func(size int) string) {
		docs = append(docs, hostileDocument{"book/" + name, bookRead, func() string { return text(megabyte) }, says, exit, mostTimes})
	}
	refused := func(name, says string, text func(size int) string) { add(name, says, exitFault, text) }
	damaged := func(name, says string, text func(size int) string) { add(name, says, exitDone, text) }

	refused("zero bytes", "book.txt:1:1: there is a zero byte here", func(n int) string { return fill("\x00", n) })
	refused("UTF-16", "book.txt: the setup book is saved as UTF-16", func(n int) string { return wide(fill("setup: leg\n", n)) })
	refused("Latin-1", "book.txt:29:9: this letter is not UTF-8", func(n int) string { return legBook + fill("# Tischb\xf6cke\n", n) })
	refused("a larger file", "book.txt: the setup book is larger than 16 MB", func(n int) string { return legBook + fill("# remark\n", 17*n) })
	refused("a newer format", "book.txt:1:1: this setup book is in format 2", func(n int) string { return "fencecard setup book 2\n" + fill("# remark\n", n) })
	refused("a format of many digits", "book.txt:1:", func(n int) string { return "fencecard setup book " + fill("9", n) })

	// Lines.
	for _, line := range []string{"\n", "#\n", "a\n", "a:\n", " a:\n", "\ta:\n", "  a: b\n", "setup:\n", "setup: a\n", "  run:\n", " \n", "\r\n", ":\n", "<<<<<<<\n"} {
		name := strings.TrimSpace(fmt.Sprintf("%q", line))
		damaged("lines before of "+name, "", func(n int) string { return fill(line, n) + legBook })
		damaged("lines behind of "+name, "leg", func(n int) string { return legBook + fill(line, n) })
	}
	damaged("line ends of old", "", func(n int) string { return legBook + fill("\r", n) })
	damaged("a long line", "book.txt:1:1: this line begins no setup", func(n int) string { return fill("x", n) + "\n" + legBook })
	damaged("a long note", "leg", func(n int) string { return inBook("  scale", "  note: "+fill("x", n)+"\n  scale") })
	damaged("many notes", "leg", func(n int) string { return inBook("  scale", fill("  note: x\n", n)+"  scale") })
	damaged("a long name", "book.txt:3:8: this name is longer than 200 letters", func(n int) string { return inBook("leg", fill("x", n)) })
	damaged("a long key", "book.txt:29:1: this line begins no setup", func(n int) string { return legBook + fill("x", n) + ": 1\n" })
	damaged("a long code", "leg", func(n int) string { return inBook("  scale", "  code: "+fill("x", n)+"\n  scale") })
	damaged("a million keys", "leg", func(n int) string { return inBook("  scale", counted("", "  k%d: 1\n", n)+"  scale") })

	// Values.
	for _, key := range []string{"kept: 2026-11-25", "scale: 1/64 in", "kind: up-cut", "diameter: 3/8 in", "plunges: yes", "fence to near edge: 1/2 in",
		"kind: mortise", "count: 1", "size: 1 5/8", "grain: top-bottom", "down: right", "leads: top", "setback: 1/2", "stop: 3 in", "cap: 15/64 in"} {
		word, _, _ := strings.Cut(key, ":")
		damaged("a long "+word, "book.txt:", func(n int) string { return inBook(key, word+": "+fill("9", n)) })
		damaged("many "+word, "book.txt:", func(n int) string { return inBook("  "+key, fill("    "+key+"\n", n)+"  "+key) })
		damaged("many commas in "+word, map[bool]string{true: "leg", false: "book.txt:"}[word == "cap"], func(n int) string { return inBook(key, word+": "+fill("1,", n)) })
	}
	damaged("many heights", "book.txt:11:12: there are", func(n int) string { return inBook("heights: ", "heights: "+counted("", "%d mm, ", n)) })
	damaged("many small heights", "book.txt:", func(n int) string { return inBook("heights: ", "heights: "+counted("", ".%06d,", n)) })
	damaged("many minutes", "book.txt:", func(n int) string { return inBook("  run", "  minutes: "+fill("1 bit,", n)+"\n  run") })
	damaged("many usable", "book.txt:", func(n int) string { return inBook("  run", "  usable fence: "+fill("1 in infeed, ", n)+"\n  run") })

	// Entries.
	_, leg, _ := strings.Cut(legBook, "\n\n")
	damaged("one name again", "book.txt:29:1: a second setup has the name", func(n int) string { return legBook + fill(leg, n) })
	damaged("many entries", "leg", func(n int) string { return counted("", strings.Replace(leg, "leg", "leg %d", 1), n) })
	damaged("many runs", "leg", func(n int) string {
		_, run, _ := strings.Cut(legBook, "  run")
		return legBook + fill("  run"+run, n)
	})
	damaged("many broken entries", "book.txt:", func(n int) string { return counted(legBook, "setup: %d\n", n) })
	damaged("small entries", "leg", func(n int) string {
		return counted(legBook, "setup: %d\n bit: a\n diameter: 1\n fence to near edge: 1\n", n)
	})
	damaged("small runs", "leg", func(n int) string {
		return legBook + fill(" run:\n  cut:\n  kind:dado\n  size:9 left-right,9 front-back,9 top-bottom\n  down:top\n  to fence:left\n  setback:.5 from left\n  width:.375\n  depth:.5\n", n)
	})
	return docs
}

// A setup is kept in each of these books: it stands behind all that was there, or
// the book is refused and left as it was, byte for byte. What was half written or
// locked would stand beside it.
func TestKeepInHostileBooks(t *testing.T) {
	t.Parallel()
	keep := documentKind{file: "book.txt", sound: legBook, plan: legPlan,
		args: []string{"book", "keep", "plan.yaml", "--setup", "1", "--name", "new", "--book", "book.txt"}}
	for _, doc := range hostileBooks() {
		t.Run(doc.name, func(t *testing.T) {
			t.Parallel()
			text := doc.text()
			base, folder := basePeak(t, keep), t.TempDir()
			peak, code, said := readIn(t, folder, keep, text)
			data, err := os.ReadFile(filepath.Join(folder, keep.file))
			require.NoError(t, err)
			now := string(data)
			if code == exitDone {
				_, headless, _ := strings.Cut(now, "\n")
				headless = strings.TrimLeft(headless, "\r\n") // no book without its format
				assert.True(t, strings.HasPrefix(now, text) || strings.HasPrefix(headless, strings.TrimLeft(text, "\r\n")), "nothing that was there is changed")
				assert.Contains(t, now[len(now)-min(len(now), 2000):], "setup: new")
			} else {
				assert.Equal(t, exitFault, code)
				assert.True(t, now == text, "the book is as it was")
			}
			assert.NotContains(t, said, "panic")
			assert.Subset(t, []string{"book.txt", "book.txt.bak", "book.txt.lock"}, namesIn(t, folder, "*book*"))
			if peak > 0 {
				t.Logf("%.1f MB, %.1f times", float64(len(text))/megabyte, float64(peak-base)/float64(len(text)))
				assert.LessOrEqual(t, peak-base, doc.most*len(text))
			}
		})
	}
}

func namesIn(t *testing.T, folder, pattern string) []string {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(folder, pattern))
	require.NoError(t, err)
	for i := range found {
		found[i] = filepath.Base(found[i])
	}
	return found
}
