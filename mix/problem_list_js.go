package mix

// problemList does in a browser what go-multierror does elsewhere. That module
// brings fmt and reflection with it: 157 kB of a download of 670.
type problemList struct {
	Errors      []error
	ErrorFormat func([]error) string
}

func (l *problemList) Error() string { return l.ErrorFormat(l.Errors) }

// addTo returns the list with one more problem; list may be nil.
func addTo(list *problemList, p *Problem) *problemList {
	if list == nil {
		list = &problemList{ErrorFormat: report}
	}
	list.Errors = append(list.Errors, p)
	return list
}

// listIn returns the problems that err carries, or nil.
func listIn(err error) []error {
	list, ok := err.(*problemList)
	if !ok {
		return nil
	}
	return list.Errors
}
