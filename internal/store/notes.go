package store

// SetNote keeps a small fact of a door or of a part of the program, such as the
// sync token that belongs to the turn it is committed with.
func (tx *Tx) SetNote(owner, key string, value []byte) error {
	_, err := tx.exec(`
		INSERT INTO note (owner, key, value) VALUES (:owner, :key, :value)
		ON CONFLICT (owner, key) DO UPDATE SET value = excluded.value`,
		p("owner", owner), p("key", key), p("value", value))
	return err
}

// Note gives a fact back; [ErrNotFound] if it was never set.
func (tx *Tx) Note(owner, key string) (value []byte, err error) {
	err = tx.row(`SELECT value FROM note WHERE owner = :owner AND key = :key`, p("owner", owner), p("key", key)).
		Scan(&value)
	return value, err
}
