// Package qr makes the QR code of a link, as ISO/IEC 18004 has it: 8-bit mode,
// error correction level L.
//
// coding.go is rsc.io/qr/coding v0.2.0 less its fmt, which alone would add 60 kB
// to a download of 600, and less the modes that a link has no use for; LICENSE is
// its own. The tests hold it to the module as published, module for module.
package qr

import "strconv"

// Most is the most bytes that a code holds: version 40, level L.
const Most = 2953

// Path encodes text as the d of an SVG path over a square of size units, one a
// module, with the quiet zone of four around it. ok is false when text is longer
// than [Most].
func Path(text string) (size int, d []byte, ok bool) {
	code := encode(text)
	if code == nil {
		return 0, nil, false
	}
	const quiet = 4
	for y := range code.Size {
		for x := 0; x < code.Size; x++ {
			run := 0
			for code.Black(x+run, y) {
				run++
			}
			if run == 0 {
				continue
			}
			d = strconv.AppendInt(append(d, 'M'), int64(x+quiet), 10)
			d = strconv.AppendInt(append(d, ' '), int64(y+quiet), 10)
			d = strconv.AppendInt(append(d, 'h'), int64(run), 10)
			d = strconv.AppendInt(append(d, "v1h-"...), int64(run), 10)
			d = append(d, 'z')
			x += run
		}
	}
	return code.Size + 2*quiet, d, true
}

// encode makes the smallest code that holds text, or nil.
func encode(text string) *Code {
	if len(text) > Most {
		return nil
	}
	data := String(text)
	for v := Version(MinVersion); v <= MaxVersion; v++ {
		if data.Bits(v) > v.DataBytes(L)*8 {
			continue
		}
		plan, err := NewPlan(v, L, 0)
		if err != nil {
			return nil
		}
		code, err := plan.Encode(data)
		if err != nil {
			return nil
		}
		return code
	}
	return nil
}
