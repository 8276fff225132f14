package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/barrow/mix"
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
	return io.ReadAll(io.LimitReader(in, mix.MaxBytes+1))
}

// plainPathError says what went wrong with a file without the system call.
func plainPathError(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return fmt.Errorf("%s: %w", p.Path, p.Err)
	}
	return err
}

// writeFile writes a file whole or not at all: to a new file beside it first,
// which then takes its name. With fresh, a file that is there is left alone.
func writeFile(name string, data []byte, fresh bool) (err error) {
	if fresh {
		if _, err := os.Lstat(name); err == nil {
			return fmt.Errorf("%s is there already; name another file", name)
		}
	}
	f, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+".*")
	if err != nil {
		return plainPathError(err)
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
			err = plainPathError(err)
		}
	}()
	if _, err = f.Write(data); err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Chmod(f.Name(), 0o644)
	}
	if err == nil && fresh {
		// A link fails where a file has come in the meantime; a rename would not.
		if err = os.Link(f.Name(), name); err == nil {
			return os.Remove(f.Name())
		}
		if errors.Is(err, fs.ErrExist) {
			return err
		}
	}
	if err == nil || fresh { // some file systems have no links
		err = os.Rename(f.Name(), name)
	}
	return err
}
