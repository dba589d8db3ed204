package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"
)

// file is one of an archive.
type file struct {
	name string
	data []byte
	runs bool // whether it is a program
}

func (f file) mode() int64 {
	if f.runs {
		return 0o755
	}
	return 0o644
}

// archive packs the files into one folder: a zip for Windows, whose own file
// manager opens it, and for the others what keeps a program a program.
func (r release) archive(m machine, files []file) (name string, data []byte, err error) {
	slices.SortFunc(files, func(a, b file) int { return strings.Compare(a.name, b.name) })
	folder := "fencecard-" + r.version
	name = folder + "-" + m.called
	var b bytes.Buffer
	if m.system == "windows" {
		err = r.zipped(&b, folder, files)
		return name + ".zip", b.Bytes(), err
	}
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return "", nil, err
	}
	if err := r.tarred(z, folder, files); err != nil {
		return "", nil, err
	}
	err = z.Close()
	return name + ".tar.gz", b.Bytes(), err
}

func (r release) tarred(to io.Writer, folder string, files []file) error {
	w := tar.NewWriter(to)
	for _, f := range files {
		err := w.WriteHeader(&tar.Header{Name: path.Join(folder, f.name), Mode: f.mode(), Size: int64(len(f.data)), ModTime: r.made, Format: tar.FormatUSTAR})
		if err != nil {
			return err
		}
		if _, err := w.Write(f.data); err != nil {
			return err
		}
	}
	return w.Close()
}

func (r release) zipped(to io.Writer, folder string, files []file) error {
	w := zip.NewWriter(to)
	for _, f := range files {
		in, err := w.CreateHeader(&zip.FileHeader{Name: path.Join(folder, f.name), Method: zip.Deflate, Modified: r.made})
		if err != nil {
			return err
		}
		if _, err := in.Write(windowsLines(f)); err != nil {
			return err
		}
	}
	return w.Close()
}

// windowsLines ends the lines of texts as the plainest editor there shows them.
func windowsLines(f file) []byte {
	if !strings.HasSuffix(f.name, ".txt") {
		return f.data
	}
	return bytes.ReplaceAll(f.data, []byte("\n"), []byte("\r\n"))
}

// sum is a line that sha256sum -c reads.
func sum(name string, data []byte) string {
	return fmt.Sprintf("%x  %s\n", sha256.Sum256(data), name)
}
