package sure

import "testing"

// TestNarrow checks that the crossing is found anywhere, however flat or steep
// the function is, and in few steps.
func TestNarrow(t *testing.T) {
	const top = 1 << 18
	ways := map[string]func(x float64) float64{
		"line":  func(x float64) float64 { return x },
		"cube":  func(x float64) float64 { return x * x * x },
		"steep": func(x float64) float64 { return x / (1e-6 + x*x) },
		"step": func(x float64) float64 {
			if x >= 0 {
				return 1
			}
			return -1e-9
		},
		"flat at 0": func(x float64) float64 { return min(x, 0) },
	}
	for name, way := range ways {
		for _, at := range []int{1, 2, 77, 1000, top / 2, top - 1, top} {
			calls := 0
			over := func(n int) float64 {
				calls++
				return way(float64(n-at) / top)
			}
			if got := narrow(0, top, over(0), over(top), over); got != at || calls > 60 {
				t.Errorf("%s: narrow = %d after %d calls, want %d", name, got, calls, at)
			}
		}
	}
}
