// Package wording says things: it turns typed results into posts. Every
// sentence of Ryebell stands here, in short plain words, and nobody else has
// any. It decides nothing and looks nothing up: what it needs is handed in.
//
// The one idea to have understood: the number that is needed first stands
// first, one next step stands last and is the first button.
package wording
