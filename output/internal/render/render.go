// Package render shows tests a PDF document as its reader will see it: it
// opens it with PDFium, a renderer that shares nothing with the writer, and
// gives pages as pictures, the text on them, and where each piece of text
// stands. All places are in millimetres from the page's top left corner.
package render

import (
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/stretchr/testify/require"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

// mmPerPoint is the size of the unit a PDF counts in.
const mmPerPoint = 25.4 / 72

// start starts the renderer, which takes seconds: every document opened by a
// test binary shares it.
var start = sync.OnceValues(func() (pdfium.Pdfium, error) {
	config := wazero.NewRuntimeConfig().WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling)
	if cache, err := compiled(); err == nil {
		config = config.WithCompilationCache(cache)
	}
	pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1, RuntimeConfig: config})
	if err != nil {
		return nil, err
	}
	return pool.GetInstance(time.Minute)
})

// compiled keeps the renderer's machine code among the user's cached files,
// where Go keeps its own, so that it is compiled once and not for every run of
// the tests.
func compiled() (wazero.CompilationCache, error) {
	folder, err := os.UserCacheDir()
	if err != nil {
		return nil, err
	}
	return wazero.NewCompilationCacheWithDir(filepath.Join(folder, "fencecard-tests"))
}

// Document is a PDF document opened by the renderer. It may be used by one
// goroutine at a time.
type Document struct {
	t      testing.TB
	pdf    pdfium.Pdfium
	handle references.FPDF_DOCUMENT
}

// Open opens a document and closes it when the test ends. A document the
// renderer cannot read fails the test.
func Open(t testing.TB, file []byte) *Document {
	t.Helper()
	if testing.Short() {
		t.Skip("starting the reference renderer takes seconds")
	}
	p, err := start()
	require.NoError(t, err, "starting the renderer")
	opened, err := p.OpenDocument(&requests.OpenDocument{File: &file})
	require.NoError(t, err, "opening the document")
	d := &Document{t, p, opened.Document}
	t.Cleanup(func() {
		if _, err := p.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: d.handle}); err != nil {
			t.Error("closing the document:", err)
		}
	})
	return d
}

// Pages counts the pages.
func (d *Document) Pages() int {
	d.t.Helper()
	n, err := d.pdf.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: d.handle})
	require.NoError(d.t, err)
	return n.PageCount
}

// Size gives the width and height of a page, from 0.
func (d *Document) Size(page int) (width, height float64) {
	d.t.Helper()
	s, err := d.pdf.FPDF_GetPageSizeByIndex(&requests.FPDF_GetPageSizeByIndex{Document: d.handle, Index: page})
	require.NoError(d.t, err)
	return s.Width * mmPerPoint, s.Height * mmPerPoint
}

// Text gives the text of a page, from 0, as a reader would copy it.
func (d *Document) Text(page int) string {
	d.t.Helper()
	text, err := d.pdf.GetPageText(&requests.GetPageText{Page: d.page(page)})
	require.NoError(d.t, err)
	return text.Text
}

func (d *Document) page(page int) requests.Page {
	return requests.Page{ByIndex: &requests.PageByIndex{Document: d.handle, Index: page}}
}
