package main

import (
	"errors"
	"testing"
)

func TestLocalZone(t *testing.T) {
	for _, c := range []struct {
		name string
		env  environ
		link string
		want string
	}{
		{"variable", environ{"TZ=Europe/Lisbon"}, "/usr/share/zoneinfo/Europe/Berlin", "Europe/Lisbon"},
		{"variable with a colon", environ{"TZ=:Europe/Lisbon"}, "", "Europe/Lisbon"},
		{"link", nil, "/usr/share/zoneinfo/Europe/Berlin", "Europe/Berlin"},
		{"relative link", nil, "../usr/share/zoneinfo/America/Sao_Paulo", "America/Sao_Paulo"},
		{"another place", nil, "/var/db/timezone/zoneinfo/Asia/Tokyo", "Asia/Tokyo"},
		{"nothing", nil, "", "UTC"},
		{"no such zone", environ{"TZ=Mars/Base"}, "/usr/share/zoneinfo/Europe/Berlin", "UTC"},
		{"rules instead of a name", environ{"TZ=CET-1CEST,M3.5.0,M10.5.0/3"}, "", "UTC"},
		{"a zone without a name", environ{"TZ=Local"}, "", "UTC"},
	} {
		readlink := func(string) (string, error) {
			if c.link == "" {
				return "", errors.New("no link")
			}
			return c.link, nil
		}
		if got := localZone(c.env, readlink).String(); got != c.want {
			t.Errorf("%s: got %s, want %s", c.name, got, c.want)
		}
	}
}
