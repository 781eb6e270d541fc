package console

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"ryebell/internal/chat"
)

// save writes the files of a post and returns a line for each, its path.
func (d *Door) save(files []chat.File) (string, error) {
	if d.config.Downloads == "" {
		return "", nil
	}
	var lines strings.Builder
	for _, f := range files {
		path, err := saveOne(d.config.Downloads, f)
		if err != nil {
			return "", fmt.Errorf("save a file: %w", err)
		}
		lines.WriteString(path + "\n")
	}
	return lines.String(), nil
}

// saveOne never overwrites: another file of that name gets a number. The same
// file sent again is left as it is.
func saveOne(folder string, f chat.File) (string, error) {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return "", err
	}
	name := fileName(f.Name)
	ext := filepath.Ext(name)
	for n := 1; ; n++ {
		path := filepath.Join(folder, name)
		if n > 1 {
			path = filepath.Join(folder, fmt.Sprintf("%s-%d%s", strings.TrimSuffix(name, ext), n, ext))
		}
		if old, err := os.ReadFile(path); err == nil && bytes.Equal(old, f.Data) {
			return path, nil
		}
		err := write(path, f.Data)
		if !errors.Is(err, fs.ErrExist) {
			return path, err
		}
	}
}

func write(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}

// fileName keeps a name inside the folder, whatever it holds.
func fileName(name string) string {
	name = strings.Map(func(r rune) rune {
		if r == '/' || r == '\\' || r == '\uFFFD' {
			return '_'
		}
		return r
	}, chat.Clean(name))
	if strings.Trim(name, ". ") == "" {
		return "file"
	}
	if runes := []rune(name); len(runes) > longestName {
		return string(runes[len(runes)-longestName:]) // the end tells what it is
	}
	return name
}

// longestName, in characters, stays under what file systems allow even if
// each takes four bytes.
const longestName = 50
