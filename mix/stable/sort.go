// Package stable sorts lists of any type with one compiled sort. Package slices
// compiles some ten functions for every type that it sorts. For the library's
// dozen types, those were a quarter of what a browser had to download.
//
//	stable.Sort(lines, func(a, b line) int { return cmp.Compare(a.price, b.price) })
package stable

// short is the longest list that is sorted in place, without more memory.
const short = 12

// Sort sorts list by compare, which returns less than zero when a comes before
// b, as [cmp.Compare] does. Equal elements keep their order. It takes at most
// about n log n comparisons.
func Sort[T any](list []T, compare func(a, b T) int) {
	if len(list) <= short {
		for i := 1; i < len(list); i++ {
			for k := i; k > 0 && compare(list[k], list[k-1]) < 0; k-- {
				list[k], list[k-1] = list[k-1], list[k]
			}
		}
		return
	}
	before := append([]T(nil), list...)
	for i, k := range order(len(list), func(i, k int) bool { return compare(before[i], before[k]) < 0 }) {
		list[i] = before[k]
	}
}

// order returns the numbers from 0 to n-1 in order of less. It is a merge sort
// that starts from runs of [short].
func order(n int, less func(i, k int) bool) []int {
	at, spare := make([]int, n), make([]int, n)
	for i := range at {
		at[i] = i
		for k := i; k%short > 0 && less(at[k], at[k-1]); k-- {
			at[k], at[k-1] = at[k-1], at[k]
		}
	}
	for run := short; run < n; run *= 2 {
		for low := 0; low < n; low += 2 * run {
			middle := min(low+run, n)
			high := min(middle+run, n)
			merge(spare[low:high], at[low:middle], at[middle:high], less)
		}
		at, spare = spare, at
	}
	return at
}

// merge writes a and b, both sorted, to out. Among equals, those of a come
// first.
func merge(out, a, b []int, less func(i, k int) bool) {
	if len(a) == 0 || len(b) == 0 || !less(b[0], a[len(a)-1]) { // in order as they are
		copy(out[copy(out, a):], b)
		return
	}
	for i := range out {
		if len(a) == 0 || len(b) > 0 && less(b[0], a[0]) {
			out[i], b = b[0], b[1:]
		} else {
			out[i], a = a[0], a[1:]
		}
	}
}
