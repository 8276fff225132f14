//go:build !js

package mix

import (
	"errors"

	"github.com/hashicorp/go-multierror"
)

// problemList is every problem of one job as one error.
type problemList = multierror.Error

// addTo returns the list with one more problem; list may be nil.
func addTo(list *problemList, p *Problem) *problemList { return multierror.Append(list, p) }

// listIn returns the problems that err carries, or nil.
func listIn(err error) []error {
	var list *problemList
	if !errors.As(err, &list) {
		return nil
	}
	return list.Errors
}
