//go:build !amd64

package lanes

const wide = false

func reactWide(flow, mass, rate, before *float32, n int, w, heat float32)                    {}
func inflowWide(t, gx, gy, gz, film, p, e, flow *float32, nx, plane, n int, dt, air float32) {}
func backWide(flow, after, f *float32, n int)                                                {}
func alongWide(dst, src, pe, f, work *float32, nx, n int)                                    {}
func downWide(flow, over, swept, p, e *float32, n int)                                       {}
func upWide(flow, under, f, was, now *float32, n int)                                        {}
func factorYWide(cap, before, after, fBefore, p, e, f *float32, n int, half float32)         {}
func factorZWide(cap, before, after, film, fBefore, p, e, f *float32, n int, half float32)   {}
func factorXWide(cap, right, pe, f *float32, n int, half float32)                            {}
func correctWide(flow, was, now, cap, capF, mass, cure, cureNext, rate, before, rateNext, table *float32, n int, k *[22]float32) {
}
