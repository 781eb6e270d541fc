// Package chat is the contract between the kitchen and the platforms people
// talk on. A [Message] comes in through a [Door], a [Post] goes out through
// one. The package imports nothing else of ours and decides nothing: it holds
// the shapes, their stored form ([Post.Encode]) and the reference renderer
// ([Plain]) that the terminal, the tests and the plain-text fallbacks use.
//
// The one idea to have understood: a [Button] is a sentence. A tap is that
// sentence said, so there is one road in.
package chat
