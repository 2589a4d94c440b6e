// Package signature holds what sound and faulty machines read: the mean of each
// reading over many designs as a function of the weather, how single machines
// scatter about it, and how far each cause at each severity moves it. The table
// is fitted to solutions of the system model of package cycle, for designs and
// weather drawn at random, by the command in gen:
//
//	go generate ./internal/judge/diagnose/signature
//
// It is a statement about machines of a kind, to be refined by what is known
// of the one at hand.
package signature

//go:generate go run ./gen -o signatures.bin
