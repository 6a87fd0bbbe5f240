package read

import (
	"io/fs"
	"path"

	"pourwright/internal/finding"
	"pourwright/internal/job"
)

// MaxRoomLog is the greatest size of a log of temperatures, bytes.
const MaxRoomLog = 4 << 20

// roomLog opens the log of temperatures that the document names and puts it into the
// job.
func (b *basinReader) roomLog() []finding.Finding {
	name := b.job.Room.Log
	if name == "" {
		return nil
	}
	full := path.Join(b.dir, name)
	if !fs.ValidPath(full) {
		return []finding.Finding{job.LogUnread.At(b.where("room.log"), "%q leads out of the piece's folder.", name).Do("Copy the log into the folder of the document and name it from there.")}
	}
	b.piece.Files = append(b.piece.Files, full)
	data, err := readLimited(b.fsys, full, MaxRoomLog)
	if err != nil {
		return []finding.Finding{job.LogUnread.At(b.where("room.log"), "The log %s could not be opened: %v.", name, err).Do("Check the file's name, or leave room.log out.")}
	}
	b.hash.Write(data)
	stretches, found := job.ParseRoomLog(full, data)
	if len(stretches) > 0 {
		b.job.Room.History, b.job.Room.Logged = stretches, true
	}
	return found
}
