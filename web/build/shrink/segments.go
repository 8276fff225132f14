package shrink

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"math"
	"slices"
)

// joinSegments lays memory out in few pieces. Go's linker writes it as tens of
// thousands of segments, one between any two runs of zeros, whose heads say little
// and pack badly.
//
// It takes memory that is the program's own, since zeros are written where nothing
// was: elsewhere something could be there already.
func joinSegments(m module) (module, error) {
	from, err := m.imports()
	if err != nil {
		return m, err
	}
	memories := reader{rest: m.body(memoryID)}
	switch {
	case from[ofMemory] > 0 || memories.count() != 1:
		return m, errors.New("it has not one memory of its own")
	case m.body(dataCountID) != nil:
		return m, errors.New("its segments are counted elsewhere too")
	}
	list, err := readSegments(m.body(dataID))
	if err != nil {
		return m, err
	}
	joined, err := join(list)
	if err != nil {
		return m, err
	}
	body := writeSegments(joined)
	if bytes.Equal(body, m.body(dataID)) {
		return m, errNothing
	}
	return m.with(dataID, body), nil
}

// segment is bytes that memory starts with, from an address on.
type segment struct {
	at    int64
	bytes []byte
}

var errSegments = errors.New("its segments are not all of memory 0, each at a fixed address")

func readSegments(b []byte) ([]segment, error) {
	r := reader{rest: b}
	var list []segment
	for k := r.count(); k > 0 && !r.bad; k-- {
		if r.byte() != 0 || r.byte() != opI32Const {
			return nil, errSegments
		}
		at := r.signed()
		if r.byte() != opEnd || at != int64(int32(at)) {
			return nil, errSegments
		}
		list = append(list, segment{int64(uint32(at)), r.bytes(r.count())})
	}
	if r.bad || len(r.rest) > 0 {
		return nil, errSegments
	}
	return list, nil
}

// join writes zeros out where that is shorter, packed, than to start a segment.
// Memory is zero before the segments are laid into it. The linker lays some out of
// order, so that zeros between two may be where a third one lies: they are joined
// by address.
func join(list []segment) ([]segment, error) {
	const gap = 4096
	var out []segment
	byAddress := func(a, b segment) int { return cmp.Compare(a.at, b.at) }
	for _, s := range slices.SortedStableFunc(slices.Values(list), byAddress) {
		if s.at+int64(len(s.bytes)) > math.MaxUint32 {
			return nil, errors.New("a segment goes past the end of memory")
		}
		if k := len(out) - 1; k >= 0 {
			last := &out[k]
			zeros := s.at - last.at - int64(len(last.bytes))
			if zeros < 0 {
				return nil, errors.New("one segment lies over another") // which is last would matter
			}
			if zeros <= gap {
				last.bytes = append(append(last.bytes, make([]byte, zeros)...), s.bytes...)
				continue
			}
		}
		out = append(out, segment{s.at, bytes.Clone(s.bytes)})
	}
	return out, nil
}

func writeSegments(list []segment) []byte {
	b := binary.AppendUvarint(nil, uint64(len(list)))
	for _, s := range list {
		b = append(b, 0, opI32Const)
		b = appendSigned(b, int64(int32(s.at)))
		b = append(b, opEnd)
		b = binary.AppendUvarint(b, uint64(len(s.bytes)))
		b = append(b, s.bytes...)
	}
	return b
}
