package ordeal

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

var kills = flag.Int("kills", 200, "how often the process is killed")

// The environment of a child: the folder of the book, and the first message that
// is not known to be answered.
const (
	childFolder = "ORDEAL_FOLDER"
	childFirst  = "ORDEAL_FIRST"
)

// scriptFile is where a child finds what is said, beside the folder of the book.
const scriptFile = "script.json"

func TestMain(m *testing.M) {
	if path := os.Getenv(childHolds); path != "" {
		hold(path)
		return
	}
	if folder := os.Getenv(childFolder); folder != "" {
		if err := live(folder, os.Getenv(childFirst)); err != nil {
			fmt.Println("broken", err)
		}
		return
	}
	os.Exit(m.Run())
}

// live is the child: it lives through the day from a message on, and says on
// stdout each message that it has answered and each post that it hands out.
func live(folder, first string) error {
	data, err := os.ReadFile(filepath.Join(filepath.Dir(folder), scriptFile))
	if err != nil {
		return err
	}
	var s script
	if err := json.Unmarshal(data, &s); err != nil {
		return err
	}
	from, err := strconv.Atoi(first)
	if err != nil {
		return err
	}
	ctx := context.Background()
	b, err := open(ctx, folder, sink{took: func(p chat.Parcel) error {
		_, err := fmt.Println("sent", p.Row, p.Room.ID)
		return err
	}}, store.Config{Readers: 1})
	if err != nil {
		return err
	}
	if err := b.found(ctx, s.Start); err != nil {
		return err
	}
	s.Steps = s.Steps[from:]
	// What the process before left is sent before anything further is said.
	if err := b.deliver(ctx, s.Steps[0].At); err != nil {
		return err
	}
	for _, do := range s.stages(func(m chat.Message) { fmt.Println("told", m.Event) }) {
		if err := do(ctx, b); err != nil {
			return err
		}
	}
	fmt.Println("done")
	return b.db.Close()
}

// The process is killed at random moments of a busy day, and begun again: every
// message that was answered is in the book once, every post and ping arrives once
// and in order (or once more, where the kill fell between sending and marking), and
// in the end all is as if nothing had happened.
func TestKill(t *testing.T) {
	s, want := rehearsed(t, busy)
	total, workers, start := max(*kills/slowness, 4), 2, time.Now()
	var wg sync.WaitGroup
	sum := make([]siege, workers)
	for w := range workers {
		sum[w] = siege{t: t, script: s, want: want, chance: rand.New(rand.NewPCG(uint64(start.UnixNano()), uint64(w))), left: total * (w + 1) / workers}
		sum[w].left -= total * w / workers
		wg.Go(func() {
			for sum[w].left > 0 && !t.Failed() {
				if err := sum[w].day(); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
	killed, days, repeats := 0, 0, 0
	for _, s := range sum {
		killed, days, repeats = killed+s.killed, days+s.days, repeats+s.repeats
	}
	t.Logf("%d kills on %d days in %v: %d posts came twice", killed, days, time.Since(start).Round(time.Millisecond), repeats)
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

	killed, days, repeats int

	folder string
	first  int              // the first message that is not known to be answered
	told   []string         // events answered today
	posts  map[string][]int // rows by room, in the order they arrived first
	last   int              // the row handed out last
}

// day lives through one day, with kills as long as there are any left.
func (s *siege) day() error {
	above := inMemory(s.t)
	data, err := json.Marshal(s.script)
	if err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(above, scriptFile), data, 0o600); err != nil {
		return err
	}
	s.days++
	s.folder, s.first, s.told, s.posts, s.last = filepath.Join(above, "book"), 0, nil, map[string][]int{}, 0
	for {
		done, err := s.life()
		if err != nil {
			return err
		}
		if done {
			return s.evening()
		}
		if err := s.look(); err != nil {
			return fmt.Errorf("behind kill %d: %w", s.killed, err)
		}
	}
}

// life is one process, from its start to its death or the end of the day.
func (s *siege) life() (done bool, err error) {
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), childFolder+"="+s.folder, childFirst+"="+strconv.Itoa(s.first))
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
	done, err = s.listen(out, func() {
		if aimed {
			_ = child.Process.Kill() // that it has ended shows below
		}
	})
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
	s.killed++
	return done, nil
}

// listen notes what the child says, and kills it a moment after one of its next
// lines. What it has said before it died is read to the end.
func (s *siege) listen(out io.Reader, kill func()) (done bool, err error) {
	lines, before := s.chance.IntN(24), s.last
	moment := time.Duration(s.chance.Int64N(int64(2 * time.Millisecond)))
	said := bufio.NewScanner(out)
	for n := 0; said.Scan(); n++ {
		if n == lines {
			defer time.AfterFunc(moment, kill).Stop()
		}
		word := strings.Fields(said.Text())
		switch word[0] {
		case "told":
			s.answered(word[1])
		case "sent":
			err = errors.Join(err, s.arrived(word[1], word[2], before))
			before = 0 // what comes again comes first
		case "done":
			done = true
		default:
			err = errors.Join(err, errors.New(said.Text()))
		}
	}
	return done, errors.Join(err, said.Err())
}

func (s *siege) answered(event string) {
	s.told = append(s.told, event)
	s.first = 1 + slices.IndexFunc(s.script.Steps, func(p step) bool { return p.Says != nil && p.Says.Event == event })
}

// arrived takes a post. It may be one that came before only if it is the first of
// its process and was the last of the process before it, which was killed before
// it had marked the post; before is zero for a post that is not the first.
func (s *siege) arrived(text, room string, before int) error {
	row, err := strconv.Atoi(text)
	if err != nil {
		return err
	}
	s.last = row
	if !slices.Contains(s.posts[room], row) {
		s.posts[room] = append(s.posts[room], row)
		return nil
	}
	s.repeats++
	if row == before {
		return nil
	}
	return fmt.Errorf("post %d came again", row)
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
	for room, posts := range s.posts {
		rows += len(posts)
		if !slices.IsSorted(posts) {
			return fmt.Errorf("posts of %s out of order: %v", room, posts)
		}
	}
	if all := 1 + strings.Count(c["outbox"], "\n"); rows != all {
		return fmt.Errorf("%d posts arrived of %d", rows, all)
	}
	return nil
}
