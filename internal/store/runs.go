package store

import (
	"database/sql"
	"errors"
	"time"

	"ryebell/internal/kitchen"
)

// RunState is how a run stands in the list of runs.
type RunState uint8

// A run is open until nothing more is waited for. One that was taken back keeps
// its number, which is not used again.
const (
	OpenRun RunState = iota + 1
	EndedRun
	TakenBack
)

// String returns the word for logs.
func (s RunState) String() string {
	switch s {
	case OpenRun:
		return "open"
	case EndedRun:
		return "ended"
	case TakenBack:
		return "taken back"
	}
	return "state not said"
}

// RunRow is a run in the list of runs: what is derived from its entries so that
// it can be found.
type RunRow struct {
	No     kitchen.RunNo
	Begun  time.Time
	Cook   kitchen.MemberNo // zero for nobody named
	Cooker string
	// Turn is the turn of the plan that it was put on from; zero for none.
	Turn  InboxID
	State RunState
	// Arrived is set for a load that no run made, which is numbered with the runs and
	// is none. Its State is ended, for nothing more is waited for.
	Arrived bool
}

func readRun(s scanner) (r RunRow, err error) {
	var begun int64
	var cook, turn sql.NullInt64
	err = s.Scan(&r.No, &begun, &cook, &r.Cooker, &turn, &r.State, &r.Arrived)
	r.Begun, r.Cook, r.Turn = fromMS(begun), kitchen.MemberNo(cook.Int64), InboxID(turn.Int64)
	return r, err
}

// SaveRun puts a run into the list, or changes what stands there of it.
func (b *Book) SaveRun(r RunRow) error {
	_, err := b.tx.exec(`
		INSERT INTO run (collective, number, begun_ms, cook, cooker, turn, state, arrived)
		VALUES (:collective, :number, :begun, :cook, :cooker, :turn, :state, :arrived)
		ON CONFLICT (collective, number) DO UPDATE SET
			begun_ms = excluded.begun_ms, cook = excluded.cook, cooker = excluded.cooker,
			turn = excluded.turn, state = excluded.state, arrived = excluded.arrived`,
		b.bound(), p("number", r.No), p("begun", toMS(r.Begun)), p("cook", orNull(r.Cook)), p("cooker", r.Cooker),
		p("turn", orNull(r.Turn)), p("state", r.State), p("arrived", r.Arrived))
	return err
}

// NextRun is the next number for a run, or for a load that arrived. One that was taken back is not used again.
func (b *Book) NextRun() (no kitchen.RunNo, err error) {
	err = b.tx.row(`SELECT coalesce(max(number), 0) + 1 FROM run WHERE collective = :collective`, b.bound()).Scan(&no)
	return no, err
}

// Run gives a run of the list by its number.
func (b *Book) Run(no kitchen.RunNo) (RunRow, error) {
	return readRun(b.tx.row(`
		SELECT number, begun_ms, cook, cooker, turn, state, arrived FROM run WHERE collective = :collective AND number = :no`,
		b.bound(), p("no", no)))
}

// OpenRuns lists the runs that are not over, by number; no loads that arrived.
func (b *Book) OpenRuns() ([]RunRow, error) {
	return each(b.tx, readRun, `
		SELECT number, begun_ms, cook, cooker, turn, state, arrived
		FROM run INDEXED BY run_open WHERE collective = :collective AND state = 1 AND arrived = 0 ORDER BY number`, b.bound())
}

// LastRuns lists at most limit runs that were not taken back, the newest first; no
// loads that arrived.
func (b *Book) LastRuns(limit int) ([]RunRow, error) {
	return each(b.tx, readRun, `
		SELECT number, begun_ms, cook, cooker, turn, state, arrived
		FROM run WHERE collective = :collective AND number > 0 AND state <> 3 AND arrived = 0 ORDER BY number DESC LIMIT :limit`,
		b.bound(), p("limit", limit))
}

// AnyLoad reports whether there is a load that was not taken back: a run, or one that
// arrived.
func (b *Book) AnyLoad() (bool, error) {
	var last int64
	err := b.tx.row(`
		SELECT number FROM run
		WHERE collective = :collective AND number > 0 AND state <> 3 ORDER BY number DESC LIMIT 1`, b.bound()).Scan(&last)
	if errors.Is(err, ErrNotFound) {
		return false, nil
	}
	return err == nil, err
}

// LastRunsOf is LastRuns of one cook.
func (b *Book) LastRunsOf(cook kitchen.MemberNo, limit int) ([]RunRow, error) {
	return each(b.tx, readRun, `
		SELECT number, begun_ms, cook, cooker, turn, state, arrived
		FROM run INDEXED BY run_cook
		WHERE collective = :collective AND cook = :cook AND state <> 3 AND arrived = 0 ORDER BY number DESC LIMIT :limit`,
		b.bound(), p("cook", cook), p("limit", limit))
}

// RunsOfPlan lists the runs that were put on from the plan of a turn, the first
// first.
func (b *Book) RunsOfPlan(turn InboxID) ([]RunRow, error) {
	return each(b.tx, readRun, `
		SELECT number, begun_ms, cook, cooker, turn, state, arrived
		FROM run INDEXED BY run_turn WHERE collective = :collective AND turn = :turn AND state <> 3 ORDER BY number`,
		b.bound(), p("turn", turn))
}
