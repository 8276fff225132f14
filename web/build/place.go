package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/hashicorp/go-multierror"
)

// place writes a built folder in one step: beside its place first, and then
// under its name. A folder that an earlier build wrote is replaced whole; any
// other that holds something is left alone.
func place(made files, out string) error {
	out, err := filepath.Abs(out)
	if err != nil {
		return err
	}
	there, err := replaceable(out)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(out), 0o777); err != nil {
		return err
	}
	fresh, err := os.MkdirTemp(filepath.Dir(out), "."+filepath.Base(out)+"-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(fresh) // where it has its name, nothing is here
	if err := os.Chmod(fresh, 0o755); err != nil {
		return err
	}
	if err := made.write(fresh); err != nil {
		return err
	}
	if !there {
		return os.Rename(fresh, out)
	}
	old := fresh + ".old"
	if err := os.Rename(out, old); err != nil {
		return err
	}
	if err := os.Rename(fresh, out); err != nil {
		return errors.Join(err, os.Rename(old, out))
	}
	return os.RemoveAll(old)
}

// write writes all files into a folder, and says of each that cannot be written.
func (f files) write(dir string) error {
	var errs *multierror.Error
	for _, name := range f.names() {
		path := filepath.Join(dir, filepath.FromSlash(name))
		err := os.MkdirAll(filepath.Dir(path), 0o755)
		if err == nil {
			err = os.WriteFile(path, f[name], 0o644)
		}
		errs = multierror.Append(errs, err)
	}
	return together(errs)
}

// replaceable reports whether a folder is there, and refuses one that holds
// anything but a build.
func replaceable(out string) (there bool, err error) {
	list, err := os.ReadDir(out)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	case err != nil:
		return false, err
	case len(list) == 0:
		return true, nil
	}
	if _, err := os.Stat(filepath.Join(out, "barrow.wasm")); err != nil {
		return true, fmt.Errorf("%s holds something that is not a build; name another folder", out)
	}
	return true, nil
}
