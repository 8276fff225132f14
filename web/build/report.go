package main

import (
	"compress/gzip"
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/andybalholm/brotli"
	"github.com/hashicorp/go-multierror"

	"example.org/barrow/web/build/shrink"
)

// size is how many bytes something is: as it is, and as hosts send it.
type size struct{ raw, gzip, brotli int }

func (s size) plus(t size) size { return size{s.raw + t.raw, s.gzip + t.gzip, s.brotli + t.brotli} }

// report writes what there is to download, file by file, and compares what a
// first visit takes with a Go program that does nothing. Then it says what each
// pass over the program made of it.
func report(w io.Writer, made output, empty []byte) error {
	names := made.files.names()
	data := [][]byte{empty}
	for _, name := range names {
		data = append(data, made.files[name])
	}
	sizes, err := measureAll(data, measure)
	if err != nil {
		return err
	}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	row := func(s size, name string) { fmt.Fprintf(t, "%d\t%d\t%d\t  %s\n", s.raw, s.gzip, s.brotli, name) }
	fmt.Fprintln(t, "bytes\tgzip 9\tbrotli 11\t  file")
	var visit size
	for i, name := range names {
		row(sizes[1+i], name)
		if slices.Contains(made.files.visited(), name) {
			visit = visit.plus(sizes[1+i])
		}
	}
	least := sizes[0]
	row(visit, "a first visit: all but "+strings.Join(besides, ", "))
	row(least, "an empty Go program, as it is linked")
	fmt.Fprintf(t, "%.2f\t%.2f\t%.2f\t  times as much\n",
		ratio(visit.raw, least.raw), ratio(visit.gzip, least.gzip), ratio(visit.brotli, least.brotli))
	if err := t.Flush(); err != nil {
		return err
	}
	return reportSteps(w, made.linked, made.steps)
}

func ratio(a, b int) float64 { return float64(a) / float64(b) }

// reportSteps writes a line for each pass over the program: what it saved, or why
// it left the program alone. What it saves is seen packed: some passes write more
// that packs better. Brotli would take a minute here.
func reportSteps(w io.Writer, linked []byte, steps []shrink.Step) error {
	data := [][]byte{linked}
	for _, s := range steps {
		data = append(data, s.Program)
	}
	sizes, err := measureAll(data, packedSize)
	if err != nil {
		return err
	}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "\nbytes saved\tgzip 9\t  pass over barrow.wasm")
	for i, s := range steps {
		before, after := sizes[i], sizes[1+i]
		about := s.Pass
		if s.Alone != nil {
			about += ": left alone: " + s.Alone.Error()
		}
		fmt.Fprintf(t, "%d\t%d\t  %s\n", before.raw-after.raw, before.gzip-after.gzip, about)
	}
	return t.Flush()
}

// measureAll measures many things at once.
func measureAll(data [][]byte, measure func([]byte) (size, error)) ([]size, error) {
	sizes := make([]size, len(data))
	var errs multierror.Group
	for i := range data {
		errs.Go(func() (err error) {
			sizes[i], err = measure(data[i])
			return err
		})
	}
	return sizes, errs.Wait().ErrorOrNil()
}

// measure compresses data as far as hosts do.
func measure(data []byte) (size, error) {
	s, err := packedSize(data)
	if err != nil {
		return s, err
	}
	err = pack(brotli.NewWriterLevel((*counter)(&s.brotli), brotli.BestCompression), data)
	return s, err
}

// packedSize is measure but for brotli.
func packedSize(data []byte) (size, error) {
	s := size{raw: len(data)}
	z, err := gzip.NewWriterLevel((*counter)(&s.gzip), gzip.BestCompression)
	if err != nil {
		return s, err
	}
	err = pack(z, data)
	return s, err
}

func pack(w io.WriteCloser, data []byte) error {
	if _, err := w.Write(data); err != nil {
		return err
	}
	return w.Close()
}

// counter counts what is written to it.
type counter int

func (c *counter) Write(b []byte) (int, error) {
	*c += counter(len(b))
	return len(b), nil
}
