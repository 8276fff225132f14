package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/hashicorp/go-multierror"

	"example.org/barrow/mix/doc"
)

// readJob reads a job document from a file, or from standard input for "-". It
// reads at most one byte more than a job may have, so that a huge file is
// refused without being held in memory.
func (a *app) readJob(name string) ([]byte, error) {
	in := a.in
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, plainPathError(err)
		}
		defer f.Close()
		if info, err := f.Stat(); err == nil && info.IsDir() {
			return nil, fmt.Errorf("%s is a folder, not a job file", name)
		}
		in = f
	}
	return io.ReadAll(io.LimitReader(in, doc.MaxBytes+1))
}

// plainPathError returns the error without the name of the system call.
func plainPathError(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return fmt.Errorf("%s: %w", p.Path, p.Err)
	}
	return err
}

// sameFile reports whether two names are for the same file.
func sameFile(a, b string) bool {
	one, err := os.Stat(a)
	if err != nil {
		return false
	}
	two, err := os.Stat(b)
	return err == nil && os.SameFile(one, two)
}

// file is a name and what to write there.
type file struct {
	name string
	data []byte
}

// writeFiles writes several files, each whole or not at all. One that fails
// does not stop the others; the error has everything that went wrong.
func writeFiles(list []file) error {
	var errs *multierror.Error
	for _, f := range list {
		errs = multierror.Append(errs, writeFile(f.name, f.data, false))
	}
	return errs.ErrorOrNil() // a nil *Error would not be a nil error
}

// writeFile writes a whole file or nothing. It writes to a new file beside it,
// which then takes its name and, when it replaces a file, that file's mode.
// Links are followed; pipes and devices are written to directly. With fresh, an
// existing file is left alone.
func writeFile(name string, data []byte, fresh bool) error {
	stat := os.Stat
	if fresh {
		stat = os.Lstat // a link to nothing counts as a file
	}
	info, err := stat(name)
	switch there := err == nil; {
	case there && fresh:
		return fmt.Errorf("%s is there already; name another file", name)
	case there && info.IsDir():
		return fmt.Errorf("%s is a folder; name a file", name)
	case there && !info.Mode().IsRegular():
		return writeInto(name, data)
	case there:
		if name, err = filepath.EvalSymlinks(name); err != nil {
			return plainPathError(err)
		}
	}
	f, err := besideOf(name)
	if err != nil {
		return plainPathError(err)
	}
	if err = fill(f, data, info); err == nil {
		err = place(f.Name(), name, fresh)
	}
	if err != nil {
		os.Remove(f.Name())
		return unwritten(plainPathError(err))
	}
	return nil
}

// writeInto writes to a pipe or a device.
func writeInto(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return plainPathError(err)
	}
	_, err = f.Write(data)
	if closed := f.Close(); err == nil {
		err = closed
	}
	return unwritten(err)
}

// besideOf creates a new file in the same folder, with the mode that the user's
// mask gives.
func besideOf(name string) (*os.File, error) {
	for n := os.Getpid(); ; n++ {
		beside := filepath.Join(filepath.Dir(name), fmt.Sprintf(".%s.%d", filepath.Base(name), n))
		f, err := os.OpenFile(beside, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

// fill writes data to f and closes it. When f is to replace a file, it gets
// that file's mode.
func fill(f *os.File, data []byte, old fs.FileInfo) error {
	_, err := f.Write(data)
	if err == nil && old != nil {
		err = f.Chmod(old.Mode().Perm())
	}
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	return err
}

// place gives a file its name. A fresh one is linked, because a link fails when
// a file has appeared in the meantime and a rename would overwrite it.
func place(from, name string, fresh bool) error {
	if fresh {
		switch err := os.Link(from, name); {
		case err == nil:
			return os.Remove(from)
		case errors.Is(err, fs.ErrExist):
			return fmt.Errorf("%s is there already; name another file", name)
		} // some file systems have no links
	}
	return os.Rename(from, name)
}
