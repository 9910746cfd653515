// Package store keeps mitts in one SQLite file. What a person decided is
// appended as revisions and never changed or deleted: documents (a decision)
// and strokes of the chart share one numbering per mitt. Everything else is
// computed again by those who read them.
//
// # Saving
//
// One goroutine writes all saves that wait in one transaction, since the disk
// takes as long to commit many as one. Each save is kept or refused on its own,
// and is on the disk before its call returns. A save may run twice, so it must
// not keep anything from its first run.
//
// Several programs may have one file open; each waits up to five seconds for
// another. Every transaction first checks that the file, its log and the log's
// map are still the ones that were opened, and that the schema is known. If the
// log was removed, the connection that still holds it writes it into the file,
// and nothing more is saved until the program is started again. Trouble with an
// open file is fault.Unavailable: it may pass, so scripts keep what they have
// and send it again.
//
// # Backups
//
// Open checks the file, and copies it to NAME-backups before it migrates it. A
// copy is made by VACUUM INTO a .part file, checked, flushed to the disk and
// then renamed. Open removes what a killed backup or restore left, unless
// somebody holds the directory's lock and is making a copy right now.
//
// Restore prepares the backup in a copy and writes its pages over the open file
// in one transaction; the old state is copied once nobody else can save. Devices
// let in or out since the backup stay so. Revisions are numbered on from the
// backup, so one number may stand for two contents: pages therefore carry
// Mitt.Restored beside the revision, and a page from before the restore is
// refused.
//
// # Moving
//
// An imported mitt is recognised by the times and contents of its revisions: a
// second import adds nothing, and a mitt that was worked on elsewhere gets the
// revisions that are missing here.
package store
