// Package store keeps mitts in one SQLite file. What a person decided is
// appended as revisions and never changed or deleted: documents (a decision)
// and strokes of the chart share one numbering per mitt. Everything else is
// computed again by those who read them.
//
// # Saving
//
// Saves that wait are carried out together by one goroutine, in one transaction
// with one commit, since the disk takes as long for many as for one. Each is
// kept or refused on its own, and each is on the disk before the call returns.
// A save may run twice, so it keeps nothing of its first run.
//
// Several programs may have one file open; they wait for each other for up to
// five seconds. Every transaction first checks that the file, its log and the
// log's map are still the ones that were opened, and that the schema is known.
// If the log was removed, the connection that still holds it writes it into the
// file, and nothing more is saved until the program is started again. Trouble
// with a file in use is fault.Unavailable: it may work later, and scripts keep
// what they have and send it again.
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
// let in or out since the backup stay so. Revisions count on from the backup, so
// a number may come a second time with other contents: that is why pages carry
// Mitt.Restored beside the revision, and why one from before the restore knows
// no revision of the file any more.
//
// # Moving
//
// A mitt that is taken in is known again by the times and contents of its
// revisions, so importing twice adds nothing, and a mitt that went on elsewhere
// gets the rest.
package store
