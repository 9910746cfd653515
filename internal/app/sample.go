package app

import (
	"context"
	"fmt"

	"thenar/internal/fault"
	"thenar/internal/project"
)

// AddSamples adds the sample mitts to a file that has no mitts, and returns
// their names.
func (a *App) AddSamples(ctx context.Context) (names []string, err error) {
	there, err := a.store.List(ctx)
	if err != nil {
		return nil, err
	}
	if len(there) > 0 {
		return nil, fault.Fields{{Path: "db", Message: fmt.Sprintf("holds %d mitts already; name a new file with -db", len(there))}}
	}
	for _, d := range project.Samples() {
		raw, err := d.Encode()
		if err != nil {
			return names, err
		}
		if _, err := a.store.Create(ctx, raw); err != nil {
			return names, err
		}
		names = append(names, d.Name)
	}
	return names, nil
}
