package record

import _ "embed"

// Archive is records.json of a backup: everything that is kept, besides the photos
// themselves, which lie beside it under their hashes.
type Archive struct {
	Format  string      `json:"format"` // asfound-archive
	Version int         `json:"version"`
	Made    string      `json:"made"`   // ISO 8601, UTC
	Device  string      `json:"device"` // that made it
	Photos  []PhotoInfo `json:"photos"`
	Rows    []Row       `json:"rows"`
}

// PhotoInfo tells of one photo of an archive.
type PhotoInfo struct {
	Hash   string `json:"hash"` // SHA-256, lower-case hex
	Type   string `json:"type"` // image/jpeg, image/png, image/webp
	Width  int    `json:"width"`
	Height int    `json:"height"`
	Bytes  int    `json:"bytes"`
	At     string `json:"at"` // ISO 8601, UTC
}

// ArchiveSchema is the JSON Schema of an Archive, generated from the types.
//
//go:embed archive.schema.json
var ArchiveSchema []byte
