package main

import (
	"compress/gzip"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"text/tabwriter"

	"github.com/andybalholm/brotli"
)

// size is how many bytes something is: as it is, and as hosts send it.
type size struct{ raw, gzip, brotli int }

func (s size) plus(t size) size { return size{s.raw + t.raw, s.gzip + t.gzip, s.brotli + t.brotli} }

// report writes what there is to download, file by file, and compares what a
// first visit takes with a Go program that does nothing.
func report(w io.Writer, made files, empty []byte) error {
	names := made.names()
	sizes := make([]size, len(names)+1)
	errs := make([]error, len(sizes))
	var all sync.WaitGroup
	for i := range sizes {
		all.Go(func() {
			data := empty
			if i < len(names) {
				data = made[names[i]]
			}
			sizes[i], errs[i] = measure(data)
		})
	}
	all.Wait()
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	row := func(s size, name string) { fmt.Fprintf(t, "%d\t%d\t%d\t  %s\n", s.raw, s.gzip, s.brotli, name) }
	fmt.Fprintln(t, "bytes\tgzip 9\tbrotli 11\t  file")
	var visit size
	for i, name := range names {
		if errs[i] != nil {
			return errs[i]
		}
		row(sizes[i], name)
		if slices.Contains(made.visited(), name) {
			visit = visit.plus(sizes[i])
		}
	}
	least := sizes[len(names)]
	if err := errs[len(names)]; err != nil {
		return err
	}
	row(visit, "a first visit: all but "+strings.Join(besides, ", "))
	row(least, "an empty Go program, as it is linked")
	fmt.Fprintf(t, "%.2f\t%.2f\t%.2f\t  times as much\n", ratio(visit.raw, least.raw), ratio(visit.gzip, least.gzip), ratio(visit.brotli, least.brotli))
	return t.Flush()
}

func ratio(a, b int) float64 { return float64(a) / float64(b) }

// measure compresses data as far as hosts do.
func measure(data []byte) (size, error) {
	s := size{raw: len(data)}
	z, err := gzip.NewWriterLevel((*counter)(&s.gzip), gzip.BestCompression)
	if err != nil {
		return s, err
	}
	b := brotli.NewWriterLevel((*counter)(&s.brotli), brotli.BestCompression)
	for _, w := range []io.WriteCloser{z, b} {
		if _, err := w.Write(data); err != nil {
			return s, err
		}
		if err := w.Close(); err != nil {
			return s, err
		}
	}
	return s, nil
}

// counter counts what is written to it.
type counter int

func (c *counter) Write(b []byte) (int, error) {
	*c += counter(len(b))
	return len(b), nil
}
