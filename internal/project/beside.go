package project

import "thenar/internal/mitt"

// Beside returns what else each number may be by which a hand is divided into fingers, with
// what that costs; nothing without fingers.
func (pl *Planner) Beside(d Document, out *Outputs) map[mitt.Number][2]mitt.Neighbour {
	if !out.Plan.Fingered() {
		return nil
	}
	req, err := d.Effective().Request()
	if err != nil {
		return nil // there would be no plan
	}
	beside := map[mitt.Number][2]mitt.Neighbour{}
	for _, n := range mitt.Divided() {
		beside[n] = pl.engine.Beside(req, out.Plan, n)
	}
	return beside
}
