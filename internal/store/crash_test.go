package store

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"ryebell/internal/kitchen"
)

// crashFolder names, for the child, the folder to write to until it is killed.
const crashFolder = "STORE_TEST_CRASH_FOLDER"

func TestMain(m *testing.M) {
	if folder := os.Getenv(crashFolder); folder != "" {
		fmt.Println(writeForEver(folder))
		os.Exit(1)
	}
	os.Exit(m.Run())
}

// writeForEver commits one turn after another and says the number of each.
func writeForEver(folder string) error {
	ctx := context.Background()
	db, err := Open(ctx, folder, Config{})
	if err != nil {
		return err
	}
	for {
		var no kitchen.EntryNo
		err := db.Update(ctx, func(tx *Tx) (err error) {
			no, err = writeTurn(tx)
			return err
		})
		if err != nil {
			return err
		}
		fmt.Println(no)
	}
}

// writeTurn writes one of each: mark, entry, ping, post.
func writeTurn(tx *Tx) (kitchen.EntryNo, error) {
	b := tx.Book(1)
	last, err := b.LastNo()
	if err != nil {
		return 0, err
	}
	event := strconv.Itoa(int(last) + 1)
	id, _, err := tx.Claim(Event{Door: "console", Event: event, Collective: 1, Room: 1, Member: 1, At: morning, Arrived: morning})
	if err != nil {
		return 0, err
	}
	no, err := b.Append(Line{By: 1, Room: 1, Inbox: id, At: morning, Written: morning, Subject: "kitchen", Entry: kitchen.StepIs{Step: 10}, Said: "round to 10"})
	if err != nil {
		return 0, err
	}
	ping := kitchen.Ping{Key: "start/" + event, Due: morning, Kind: kitchen.StartNow, Loudness: kitchen.DuePing}
	if err := b.Reconcile(ping.Key, []kitchen.Ping{ping}, morning); err != nil {
		return 0, err
	}
	_, err = b.Queue(Parcel{Room: 1, Rank: InTurn, Post: []byte("noted"), Inbox: id}, morning)
	return no, err
}

// foundation is a collective with a member and a room, each the first of their kind.
func foundation(tx *Tx, address string) error {
	c, err := tx.NewCollective("growers", morning)
	if err != nil {
		return err
	}
	b := tx.Book(c)
	if _, err := b.AddMember("Ana", kitchen.Steward, morning); err != nil {
		return err
	}
	_, err = b.AddRoom(RoomRow{Door: "console", Address: address, Kind: HomeRoom, Joined: morning})
	return err
}

// countsOf counts the rows that a turn makes one of each.
func countsOf(t testing.TB, db *DB) (n [4]int) {
	t.Helper()
	err := db.View(context.Background(), func(tx *Tx) error {
		return tx.row(`SELECT (SELECT count(*) FROM inbox), (SELECT count(*) FROM entry),
			(SELECT count(*) FROM ping), (SELECT count(*) FROM outbox)`).Scan(&n[0], &n[1], &n[2], &n[3])
	})
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func TestKilledWhileWriting(t *testing.T) {
	folder := t.TempDir()
	db := open(t, folder)
	if err := db.Update(context.Background(), func(tx *Tx) error { return foundation(tx, "room") }); err != nil {
		t.Fatal(err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	for round := range 10 {
		acknowledged := killAfter(t, folder, 5+7*round)
		db := open(t, folder)
		n := countsOf(t, db)
		if n != [4]int{n[1], n[1], n[1], n[1]} {
			t.Errorf("half a turn: %d marks, %d entries, %d pings, %d posts", n[0], n[1], n[2], n[3])
		}
		if n[1] < acknowledged {
			t.Errorf("acknowledged %d entries, found %d", acknowledged, n[1])
		}
		if err := verify(t, db, 1); err != nil {
			t.Error(err)
		}
		if err := db.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// Two attempts within this process must not open the folder to another one.
func TestAnotherProcessIsRefused(t *testing.T) {
	folder := t.TempDir()
	open(t, folder)
	if _, err := Open(context.Background(), folder, Config{}); !errors.Is(err, ErrInUse) {
		t.Fatalf("second opening: %v", err)
	}
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), crashFolder+"="+folder)
	out, err := child.Output()
	if err == nil || !strings.Contains(string(out), ErrInUse.Error()) {
		t.Errorf("another process: %q, %v", out, err)
	}
}

// killAfter runs the child until it has acknowledged some turns, kills it and
// gives the last number that it said.
func killAfter(t *testing.T, folder string, turns int) (last int) {
	t.Helper()
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), crashFolder+"="+folder)
	out, err := child.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := child.Start(); err != nil {
		t.Fatal(err)
	}
	said := bufio.NewScanner(out)
	for said.Scan() {
		no, err := strconv.Atoi(said.Text())
		if err != nil {
			t.Fatalf("the child says %q", said.Text())
		}
		last = no
		if turns--; turns == 0 {
			if err := child.Process.Kill(); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := child.Wait(); err == nil || !strings.Contains(err.Error(), "killed") {
		t.Fatalf("the child ended with %v", err)
	}
	return last
}

func TestWhatFailsLeavesNothing(t *testing.T) {
	db := open(t, t.TempDir())
	if err := db.Update(context.Background(), func(tx *Tx) error { return foundation(tx, "room") }); err != nil {
		t.Fatal(err)
	}
	broken := errors.New("broken")
	for name, end := range map[string]func() error{
		"error": func() error { return broken },
		"panic": func() error { panic(broken) },
	} {
		err := func() (err error) {
			defer func() {
				if r := recover(); r != nil {
					err = r.(error)
				}
			}()
			return db.Update(context.Background(), func(tx *Tx) error {
				if _, err := writeTurn(tx); err != nil {
					return err
				}
				return end()
			})
		}()
		if !errors.Is(err, broken) {
			t.Errorf("%s: got %v", name, err)
		}
		if n := countsOf(t, db); n != [4]int{} {
			t.Errorf("%s left %v rows", name, n)
		}
	}
	select {
	case <-db.OutboxChanged():
		t.Error("woke the outbox for nothing")
	case <-db.PingsChanged():
		t.Error("woke the reminders for nothing")
	default:
	}
}

func TestWakeUps(t *testing.T) {
	db := open(t, t.TempDir())
	if err := db.Update(context.Background(), func(tx *Tx) error { return foundation(tx, "room") }); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		err := db.Update(context.Background(), func(tx *Tx) error { _, err := writeTurn(tx); return err })
		if err != nil {
			t.Fatal(err)
		}
	}
	for name, c := range map[string]<-chan struct{}{"outbox": db.OutboxChanged(), "pings": db.PingsChanged()} {
		if len(c) != 1 {
			t.Errorf("%s: %d wake-ups wait, want 1", name, len(c))
		}
	}
}

func TestCancelledBeforeItsTurn(t *testing.T) {
	db := open(t, t.TempDir())
	ctx, cancel := context.WithCancel(context.Background())
	err := db.Update(context.Background(), func(*Tx) error {
		cancel()
		return db.Update(ctx, func(*Tx) error { return errors.New("had its turn") })
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want context.Canceled", err)
	}
}
