package main

import (
	"cmp"
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
// refused without being held in memory. from is the file that it has read, or nil.
func (a *app) readJob(name string) (data []byte, from fs.FileInfo, err error) {
	in := a.in
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, nil, named(name, err)
		}
		defer f.Close()
		in = f
	}
	if f, ok := in.(*os.File); ok {
		if from, err = f.Stat(); err == nil && from.IsDir() {
			return nil, nil, fmt.Errorf("%s is a folder, not a job file", name)
		}
	}
	data, err = io.ReadAll(io.LimitReader(in, doc.MaxBytes+1))
	return data, from, err
}

// named returns the error about a file under the name that the user gave, without the
// name of the system call and of any file written for the while.
func named(name string, err error) error {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		return fmt.Errorf("%s: %w", name, p.Err)
	}
	if l, ok := errors.AsType[*os.LinkError](err); ok {
		return fmt.Errorf("%s: %w", name, l.Err)
	}
	return err
}

// file is a name, the flag that gave it, and what to write there.
type file struct {
	flag, name string
	data       []byte
}

// apart returns an error when a file would be written over the job that was read, or
// two over each other, under whatever names. Pipes and devices are left out, since
// nothing is written over there.
func apart(job fs.FileInfo, list []file) error {
	for i, f := range list {
		if info, err := os.Stat(f.name); err == nil && job != nil && info.Mode().IsRegular() && os.SameFile(info, job) {
			return fmt.Errorf("--%s %s would overwrite the job; name another file", f.flag, f.name)
		}
		for _, other := range list[:i] {
			if sameTarget(f.name, other.name) {
				return fmt.Errorf("--%s and --%s are the same file, %s; name two", other.flag, f.flag, f.name)
			}
		}
	}
	return nil
}

// sameTarget reports whether what is written under two names goes to one file, which
// need not be there yet.
func sameTarget(a, b string) bool {
	a, errA := followed(a)
	b, errB := followed(b)
	if errA != nil || errB != nil {
		return false // nothing can be written there
	}
	one, errA := os.Stat(a)
	two, errB := os.Stat(b)
	if errA == nil && errB == nil {
		return one.Mode().IsRegular() && os.SameFile(one, two)
	}
	dirA, nameA := filepath.Split(a) // keeps "..", which after a link does not lead back
	dirB, nameB := filepath.Split(b)
	one, errA = os.Stat(cmp.Or(dirA, "."))
	two, errB = os.Stat(cmp.Or(dirB, "."))
	return errA == nil && errB == nil && os.SameFile(one, two) && nameA == nameB
}

// maxLinks is the most links that are followed from one to the next, as on Linux.
const maxLinks = 40

// followed returns the name of the file that a name leads to through symbolic links,
// whether or not it is there.
func followed(name string) (string, error) {
	for range maxLinks {
		info, err := os.Lstat(name)
		if err != nil || info.Mode()&fs.ModeSymlink == 0 {
			return name, nil
		}
		to, err := os.Readlink(name)
		if err != nil {
			return name, nil // gone in the meantime
		}
		if !filepath.IsAbs(to) {
			dir, _ := filepath.Split(name)
			to = dir + to
		}
		name = to
	}
	return "", errors.New("its links lead round in a circle")
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
// Links are followed, also to a file that is not there yet; pipes and devices are
// written to directly. With fresh, an existing file or link is left alone.
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
	}
	target, err := followed(name)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	as := name
	if target != name {
		as += ", which is a link to " + target
	}
	f, err := besideOf(target)
	if err != nil {
		return named(as, err)
	}
	if err = fill(f, data, info); err == nil {
		err = place(f.Name(), target, fresh)
	}
	if err != nil {
		os.Remove(f.Name())
		return &writeError{named(as, err)}
	}
	return nil
}

// writeInto writes to a pipe or a device.
func writeInto(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return named(name, err)
	}
	_, err = f.Write(data)
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return &writeError{named(name, err)}
	}
	return nil
}

// besideOf creates a new file in the same folder, with the mode that the user's
// mask gives. Its own name is short, so that a long name has room.
func besideOf(name string) (*os.File, error) {
	dir, _ := filepath.Split(name)
	for n := os.Getpid(); ; n++ {
		beside := fmt.Sprintf("%s.barrow.%d", dir, n)
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
