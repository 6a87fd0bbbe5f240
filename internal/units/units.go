// Package units holds the quantities of the trade as types, one base unit each,
// so that a length is never added to a mass and a US gallon never read as an
// imperial one.
//
// The base unit of a type is the unit its JSON key is named after: a Length
// marshals as millimetres under a key that ends in _mm, a Volume as litres under
// _l, a Mass as kilograms under _kg, and so on.
package units

// A Length is a distance in millimetres.
type Length float64

// An Area is in square millimetres.
type Area float64

// A Volume is in litres.
type Volume float64

// A Mass is in kilograms.
type Mass float64

// A Temperature is in degrees Celsius.
type Temperature float64

// A Duration is in hours.
type Duration float64

// A Density is in kilograms per cubic metre (grams per litre).
type Density float64

// A Pressure is in kilopascals.
type Pressure float64

// A Force is in newtons.
type Force float64

// An Angle is in degrees.
type Angle float64

// A Speed is in millimetres per minute.
type Speed float64

// A Fraction is a plain ratio: 0.05 is five per cent.
type Fraction float64

// Exact conversion factors.
const (
	Millimetre Length = 1
	Centimetre Length = 10
	Metre      Length = 1000
	Inch       Length = 25.4  // exact since 1959. Source: [nist-sp811] app. B.8
	Foot       Length = 304.8 // exact: 12 in, written out since 12 * 25.4 is not in floating point

	Litre          Volume = 1
	Millilitre     Volume = 0.001
	CubicMetre     Volume = 1000
	USGallon       Volume = 3.785411784 // exact: 231 cubic inches. Source: [nist-sp811] app. B.8
	ImperialGallon Volume = 4.54609     // exact. Source: [nist-sp811] app. B.8
	USFluidOunce   Volume = USGallon / 128

	Kilogram Mass = 1
	Gram     Mass = 0.001
	Pound    Mass = 0.45359237 // exact. Source: [nist-sp811] app. B.8
	Ounce    Mass = Pound / 16

	Hour   Duration = 1
	Minute Duration = 1.0 / 60
	Day    Duration = 24
)

// In returns l in inches.
func (l Length) In() float64 { return float64(l / Inch) }

// MM returns l in millimetres.
func (l Length) MM() float64 { return float64(l) }

// M2 returns a in square metres.
func (a Area) M2() float64 { return float64(a) * 1e-6 }

// MM3 returns v in cubic millimetres.
func (v Volume) MM3() float64 { return float64(v) * 1e6 }

// M3 returns v in cubic metres.
func (v Volume) M3() float64 { return float64(v) * 1e-3 }

// USGal returns v in US liquid gallons.
func (v Volume) USGal() float64 { return float64(v / USGallon) }

// ImperialGal returns v in imperial gallons.
func (v Volume) ImperialGal() float64 { return float64(v / ImperialGallon) }

// FromMM3 turns cubic millimetres into a Volume.
func FromMM3(mm3 float64) Volume { return Volume(mm3 * 1e-6) }

// Times returns the volume of area a through depth d.
func (a Area) Times(d Length) Volume { return FromMM3(float64(a) * float64(d)) }

// Of returns the mass of volume v at density d.
func (d Density) Of(v Volume) Mass { return Mass(float64(d) * v.M3()) }

// Fill returns the volume that mass m takes at density d; d must be positive.
func (d Density) Fill(m Mass) Volume { return Volume(float64(m) / float64(d) * 1000) }

// Lb returns m in avoirdupois pounds.
func (m Mass) Lb() float64 { return float64(m / Pound) }

// G returns m in grams.
func (m Mass) G() float64 { return float64(m) * 1000 }

// F returns t in degrees Fahrenheit.
func (t Temperature) F() float64 { return float64(t)*9/5 + 32 }
