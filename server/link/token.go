package link

import (
	"crypto/rand"
	"crypto/sha256"
	"encoding/base32"
	"encoding/hex"
)

// A token is 160 random bits in lower-case base32: nothing at its end or within that a mail program would cut off.
const tokenBytes = 20

var letters = base32.NewEncoding("abcdefghijklmnopqrstuvwxyz234567").WithPadding(base32.NoPadding)

func newToken() (string, error) {
	var b [tokenBytes]byte
	if _, err := rand.Read(b[:]); err != nil {
		return "", err
	}
	return letters.EncodeToString(b[:]), nil
}

// secretOf is what is kept of a token. Looking up a hash takes a time that tells nothing of the token.
func secretOf(token string) string {
	sum := sha256.Sum256([]byte(token))
	return hex.EncodeToString(sum[:])
}
