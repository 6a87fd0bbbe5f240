// Package structure answers: how heavy is the piece at every moment somebody
// lifts it, and how many people does that take?
//
// # Model
//
// Masses are volumes times densities, nothing more:
//
//	shell     = rhoC V_shell                      kg, cured concrete
//	resin     = rhoR V_resin                      kg, in the basin at delivery
//	delivered = shell + resin + extras            kg
//	flip      = shell + form + foam               kg
//
// The piece is turned over in its form: the cast shell still holds the foam
// knockout and still sits in its panels, so all three are on the hands at once,
// and no resin yet is.
//
// Lifters is the least team whose capacity by the team rule reaches the mass:
//
//	capacity(n) = share(n) n C,  share(1) = 1, share(2) = 2/3, share(n >= 3) = 1/2
//
// with C = 23 kg, what one person may lift at best: close to the body, knuckle
// height, no twist. The rule is published for teams of two and three; one half is
// kept for larger teams, which rarely keep step, so above four people the finding
// asks for lifting gear.
//
// # Left out
//
// Stresses, deflection, tipping, the reach and height of the lift (which only
// lower C), and the first hours, when the shell still holds its mixing water and
// weighs a few per cent more.
//
// # Sources
//
// Team rule [hse-l23]; load constant [niosh-94-110]; tube sections [en-10219-2].
package structure
