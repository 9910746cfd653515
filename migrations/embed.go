// Package migrations holds the steps that bring a database from nothing to
// the newest schema, one numbered file a step.
//
// A step that has been released is never changed: the next one adds to it.
package migrations

import "embed"

// FS holds the steps as NNNN_name.sql, numbered from 0001 without a hole.
//
//go:embed *.sql
var FS embed.FS
