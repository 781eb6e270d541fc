package ordeal

import (
	"bufio"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

var (
	kills = flag.Int("kills", 200, "how often the process is killed")
	seed  = flag.Uint64("seed", 0, "of the kills of a run that failed, which says it; 0 for a new one")
)

// The environment of a child: the folder of the book, the first step that is not
// known to be done, and which way of life it leads.
const (
	childFolder = "ORDEAL_FOLDER"
	childFirst  = "ORDEAL_FIRST"
	childWay    = "ORDEAL_WAY"
)

// way is how a child lives: doing one thing after the other, or talking while
// reminders and outbox run beside.
type way string

const (
	inTurn way = "in turn"
	beside way = "beside"
)

// scriptFile is where a child finds what happens, beside the folder of the book.
const scriptFile = "script.json"

func TestMain(m *testing.M) {
	if path := os.Getenv(childHolds); path != "" {
		hold(path)
		return
	}
	if folder := os.Getenv(childFolder); folder != "" {
		if err := live(folder, os.Getenv(childFirst), way(os.Getenv(childWay))); err != nil {
			fmt.Println("broken", err)
		}
		return
	}
	os.Exit(m.Run())
}

// The process is killed at random moments of a busy day, and begun again: every
// message that was answered is in the book once, every post and ping arrives once
// and in order (or once more, where the kill fell between sending and marking), and
// in the end all is as if nothing had happened.
func TestKill(t *testing.T) {
	s, want := rehearsed(t, busy)
	total, start := max(*kills/slowness, 4), time.Now()
	if *seed == 0 {
		*seed = uint64(start.UnixNano())
	}
	var wg sync.WaitGroup
	sum := make([]siege, 2)
	for w := range sum {
		sum[w] = siege{
			t: t, script: s, want: want, chance: rand.New(rand.NewPCG(*seed, uint64(w))),
			left: total*(w+1)/len(sum) - total*w/len(sum), killed: map[way]int{}, repeats: map[way]int{},
		}
		wg.Go(func() {
			for sum[w].left > 0 && !t.Failed() {
				// Every other day of each is lived the other way.
				way := []way{inTurn, beside}[(sum[w].days+w)%2]
				if err := sum[w].day(way); err != nil {
					t.Errorf("%s, -seed %d: %v", way, *seed, err)
				}
			}
		})
	}
	wg.Wait()
	killed := 0
	for _, way := range []way{inTurn, beside} {
		n := sum[0].killed[way] + sum[1].killed[way]
		t.Logf("%s: %d kills, %d posts came twice", way, n, sum[0].repeats[way]+sum[1].repeats[way])
		killed += n
	}
	t.Logf("%d kills on %d days in %v, -seed %d", killed, sum[0].days+sum[1].days, time.Since(start).Round(time.Millisecond), *seed)
	if killed != total {
		t.Errorf("%d kills, want %d", killed, total)
	}
}

// siege is the killing of one process after another.
type siege struct {
	t      *testing.T
	script script
	want   storetest.Contents
	chance *rand.Rand
	left   int // kills to come

	days            int
	killed, repeats map[way]int

	way    way
	folder string
	first  int              // the first step that is not known to be done
	told   []string         // events answered today
	posts  map[string][]int // rows by room and rank, in the order they arrived first
	// last is the row of each room and rank that was handed out last. before is the
	// same as the process before left it, without those that came again.
	last, before map[string]int
}

// day lives through one day, with kills as long as there are any left.
func (s *siege) day(w way) error {
	above := inMemory(s.t)
	data, err := json.Marshal(s.script)
	if err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(above, scriptFile), data, 0o600); err != nil {
		return err
	}
	s.days++
	s.way, s.folder, s.first, s.told = w, filepath.Join(above, "book"), 0, nil
	s.posts, s.last = map[string][]int{}, map[string]int{}
	for {
		done, err := s.life()
		if err != nil {
			return err
		}
		if done {
			return s.evening()
		}
		if err := s.look(); err != nil {
			return fmt.Errorf("behind kill %d: %w", s.killed[w], err)
		}
	}
}

// life is one process, from its start to its death or the end of the day.
func (s *siege) life() (done bool, err error) {
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), childFolder+"="+s.folder, childFirst+"="+strconv.Itoa(s.first), childWay+"="+string(s.way))
	out, err := child.StdoutPipe()
	if err != nil {
		return false, err
	}
	if err := child.Start(); err != nil {
		return false, err
	}
	aimed := s.left > 0
	if aimed {
		s.left--
	}
	done, err = s.listen(out, aimed, child.Process)
	died := child.Wait()
	if err != nil || done && died == nil {
		if aimed {
			s.left++ // it was spared
		}
		return done, err
	}
	if died == nil || !strings.Contains(died.Error(), "killed") {
		return false, fmt.Errorf("the child ended with %v", died)
	}
	s.killed[s.way]++
	return done, nil
}

// silence is how long a child that lives may say nothing.
const silence = time.Minute

// listen notes what the child says and, if it is aimed at, kills it a moment after
// one of its next lines. What it has said before it died is read to the end, unless
// it says what it must not.
func (s *siege) listen(out io.Reader, aimed bool, child *os.Process) (done bool, err error) {
	lines := s.chance.IntN(24)
	moment := time.Duration(s.chance.Int64N(int64(2 * time.Millisecond)))
	s.before = maps.Clone(s.last)
	kill := func() { _ = child.Kill() } // that it has ended shows to the caller
	var silent atomic.Bool
	watch := time.AfterFunc(silence, func() { silent.Store(true); kill() })
	defer watch.Stop()
	said := bufio.NewScanner(out)
	for n := 0; said.Scan(); n++ {
		watch.Reset(silence)
		if n == lines && aimed {
			defer time.AfterFunc(moment, kill).Stop()
		}
		over, err := s.hear(said.Text())
		if err != nil {
			kill()
			return false, err
		}
		done = done || over
	}
	if silent.Load() {
		return false, fmt.Errorf("the child said nothing for %v, with %d of %d steps done", silence, s.first, len(s.script.Steps))
	}
	return done, said.Err()
}

// hear takes a line of a child, and reports whether its day is over.
func (s *siege) hear(line string) (over bool, err error) {
	word := strings.Fields(line)
	switch {
	case len(word) == 2 && word[0] == "told":
		s.answered(word[1])
		return false, nil
	case len(word) == 3 && word[0] == "sent":
		return false, s.arrived(word[1], word[2])
	case line == "done":
		return true, nil
	}
	return false, errors.New(line)
}

func (s *siege) answered(event string) {
	s.told = append(s.told, event)
	s.first = 1 + slices.IndexFunc(s.script.Steps, func(p step) bool { return p.Says != nil && p.Says.Event == event })
}

// arrived takes a post. It may be one that came before only if it was the last one
// of its room and rank of a process before, which was killed before it had marked the
// post; one that overtakes may have come in between.
func (s *siege) arrived(text, lane string) error {
	row, err := strconv.Atoi(text)
	if err != nil {
		return err
	}
	s.last[lane] = row
	if !slices.Contains(s.posts[lane], row) {
		s.posts[lane] = append(s.posts[lane], row)
		return nil
	}
	s.repeats[s.way]++
	if row != s.before[lane] {
		return fmt.Errorf("post %d to %s came again: its mark is missing", row, lane)
	}
	delete(s.before, lane)
	return nil
}

// look examines the book of a process that was killed.
func (s *siege) look() error {
	c, err := storetest.Examine(s.folder)
	if err != nil {
		if errors.Is(err, os.ErrNotExist) || len(s.told) == 0 {
			return nil // killed before there was a book
		}
		return err
	}
	if err := s.inBook(c); err != nil {
		return err
	}
	if err := storetest.Contradiction(s.folder); err != nil {
		return err
	}
	db, err := store.OpenReader(s.t.Context(), s.folder, store.Config{Readers: 1})
	if err != nil {
		return err
	}
	return errors.Join(agrees(s.t.Context(), db), db.Close())
}

// inBook reports an answered message that is not in the book.
func (s *siege) inBook(c storetest.Contents) error {
	for _, event := range s.told {
		if n := strings.Count(c["inbox"], "|'"+event+"'|"); n != 1 {
			return fmt.Errorf("%s is in the book %d times: %w", event, n, errLost)
		}
	}
	return nil
}

// evening holds the book of a day with kills against that of a day without, and
// looks whether every post arrived.
func (s *siege) evening() error {
	c, err := storetest.Alike(s.folder)
	if err != nil {
		return err
	}
	if err := errors.Join(s.inBook(c), same(c, s.want), sound(s.t.Context(), s.folder)); err != nil {
		return err
	}
	rows := 0
	for lane, posts := range s.posts {
		rows += len(posts)
		if !slices.IsSorted(posts) {
			return fmt.Errorf("posts of %s out of order: %v", lane, posts)
		}
	}
	if all := 1 + strings.Count(c["outbox"], "\n"); rows != all {
		return fmt.Errorf("%d posts arrived of %d", rows, all)
	}
	return nil
}
