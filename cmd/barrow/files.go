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
// stops one byte past what a job may have, so that a huge file is refused
// without being held.
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

// plainPathError says what went wrong with a file without the system call.
func plainPathError(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return fmt.Errorf("%s: %w", p.Path, p.Err)
	}
	return err
}

// sameFile reports whether two names are one file.
func sameFile(a, b string) bool {
	one, err := os.Stat(a)
	if err != nil {
		return false
	}
	two, err := os.Stat(b)
	return err == nil && os.SameFile(one, two)
}

// file is what is to be in a file.
type file struct {
	name string
	data []byte
}

// writeFiles writes each of several files whole or not at all, as writeFile does.
// One that cannot be written keeps no other from it, and all that went wrong comes
// back.
func writeFiles(list []file) error {
	var errs *multierror.Error
	for _, f := range list {
		errs = multierror.Append(errs, writeFile(f.name, f.data, false))
	}
	return errs.ErrorOrNil() // errs itself is no error that is nil
}

// writeFile writes a file whole or not at all: to a new file beside it first,
// which then takes its name and, where there was one, its mode. A link is
// followed; a pipe or a device is written to as it is. With fresh, a file that
// is there is left alone.
func writeFile(name string, data []byte, fresh bool) error {
	stat := os.Stat
	if fresh {
		stat = os.Lstat // a link to nowhere is there, too
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

// besideOf makes a new file in name's folder, with the mode that the user's
// mask gives a new file.
func besideOf(name string) (*os.File, error) {
	for n := os.Getpid(); ; n++ {
		f, err := os.OpenFile(filepath.Join(filepath.Dir(name), fmt.Sprintf(".%s.%d", filepath.Base(name), n)), os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

// fill writes data to f and closes it. The file that f is to replace, if any,
// gives it its mode.
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

// place gives a file its name. A fresh one is linked: that fails where a file
// has come in the meantime, and a rename would not.
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
