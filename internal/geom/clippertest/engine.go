//go:build clipper

package clippertest

// #cgo LDFLAGS: -lpolyclipping
// #cgo CXXFLAGS: -O2
// #include <stdint.h>
// void *combine(int op, const int64_t *a, const int32_t *sizesA, int na, const int64_t *b, const int32_t *sizesB, int nb);
// void *grow(const int64_t *a, const int32_t *sizes, int n, double d, double arc);
// int64_t took(void *p);
// int rings(void *p);
// int ring_size(void *p, int i);
// void ring_points(void *p, int i, int64_t *to);
// void drop(void *p);
import "C"

import (
	"time"
	"unsafe"
)

// A Ring is a closed line of grid points, x and y in turn.
type Ring []int64

// An Op is what Combine does with its operands.
type Op int

// The operations.
const (
	Union Op = iota
	Intersect
	Subtract
	Xor
)

// Combine returns op of a and b, both filled where the winding number is not zero,
// and the time it took without passing rings in and out.
func Combine(op Op, a, b []Ring) ([]Ring, time.Duration) {
	pa, sa := flat(a)
	pb, sb := flat(b)
	return collect(C.combine(C.int(op), points(pa), sizes(sa), C.int(len(a)), points(pb), sizes(sb), C.int(len(b))))
}

// Grow returns a grown by d grid steps with round joins whose chords err by arc.
func Grow(a []Ring, d, arc float64) ([]Ring, time.Duration) {
	p, s := flat(a)
	return collect(C.grow(points(p), sizes(s), C.int(len(a)), C.double(d), C.double(arc)))
}

func flat(rings []Ring) (points []int64, sizes []int32) {
	for _, r := range rings {
		points = append(points, r...)
		sizes = append(sizes, int32(len(r)/2))
	}
	return points, sizes
}

func points(p []int64) *C.int64_t { return (*C.int64_t)(unsafe.Pointer(unsafe.SliceData(p))) }

func sizes(s []int32) *C.int32_t { return (*C.int32_t)(unsafe.Pointer(unsafe.SliceData(s))) }

func collect(p unsafe.Pointer) ([]Ring, time.Duration) {
	defer C.drop(p)
	out := make([]Ring, int(C.rings(p)))
	for i := range out {
		out[i] = make(Ring, 2*int(C.ring_size(p, C.int(i))))
		C.ring_points(p, C.int(i), points(out[i]))
	}
	return out, time.Duration(C.took(p))
}
