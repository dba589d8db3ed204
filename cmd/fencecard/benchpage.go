package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/bench"
	"fencecard/cmd/internal/desk"
	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/session"
	"fencecard/cmd/internal/terminal"
	"fencecard/cmd/internal/ticks"
	"fencecard/joinery/plantext"
)

// benchOptions are the flags of the bench command.
type benchOptions struct {
	port   int
	noOpen bool
	share  string // an address, or anyAddress
	search session.SearchFlag
	batch  int
	book   string
}

// anyAddress stands for --share without an address.
const anyAddress = "any"

func (a *app) benchCommand() *cobra.Command {
	var o benchOptions
	cmd := &cobra.Command{
		Long: manual.Topic("bench"),
		Example: `  fencecard bench bench.yaml                    its sheets in your browser
  fencecard bench bench.yaml --share            and on a tablet beside the table
  fencecard bench bench.yaml --share=192.168.1.20 --port 8080
  fencecard bench                               the built-in boot bench, to look around`,
		Args: cobra.MaximumNArgs(1),
		RunE: a.work(func(ctx context.Context, args []string) error { return a.bench(ctx, args, o) }),
	}
	f := cmd.Flags()
	cmd.ValidArgsFunction = session.OfferPlan
	f.IntVar(&o.port, "port", 0, "serve at this port `N`; left out: the same at each start of a plan, where it is free")
	f.BoolVar(&o.noOpen, "no-open", false, "start no browser")
	f.StringVar(&o.share, "share", "", "let devices in over your network, at this `ADDRESS` of this machine, or at its only one")
	f.Lookup("share").NoOptDefVal = anyAddress
	o.search.Flag(cmd)
	f.IntVar(&o.batch, "batch", 1, "for `N` of the whole work: every count multiplied")
	session.BookFlag(cmd, &o.book)
	return cmd
}

func (a *app) bench(ctx context.Context, args []string, o benchOptions) error {
	if o.search < 0 || o.port < 0 || o.port > 65535 {
		return session.Usage(errors.New("--search takes a time such as 5s, and --port a number up to 65535"))
	}
	at, err := o.sharedAt()
	if err != nil {
		return err
	}
	w, err := a.benchWork(args, o)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	defer stop()
	home, err := a.serveBench(ctx, w, o, at)
	if err != nil || home == nil {
		return err
	}
	opened := home.address
	if w.file == "" {
		opened += "plan" // where one begins
	}
	if err := a.Tell("%s\n", opened); err != nil {
		return err
	}
	a.Note("the bench page is at %s until you press Ctrl-C", opened)
	if !o.noOpen {
		if err := terminal.OpenBrowser(opened); err != nil {
			a.Note("no browser was started: %v; open the address yourself", err)
		}
	}
	err = <-home.ended
	stop()
	a.serving.Wait() // for those that were opened from the first
	return err
}

// servedBench is a bench page that is served.
type servedBench struct {
	address string
	ended   chan error
}

// serveBench begins to serve a plan; nil where it was interrupted before there was
// anything to serve.
func (a *app) serveBench(ctx context.Context, w *benchWork, o benchOptions, shared string) (*servedBench, error) {
	kept, err := a.openTicks(ctx, w, o.book)
	if err != nil {
		return nil, err
	}
	done := a.Busy("making the deck")
	options := bench.Options{
		Make: w.make, Look: w.look, Ticks: kept,
		// However quiet it is to be: without it nobody gets in.
		Letting: func(address string) { terminal.TellLetting(a.Err, a.screen, address) },
		Faulty:  a.tellFaulty,
		Begin:   w.begin,
	}
	begin := ""
	if w.file != "" {
		options.Desk = desk.New(w.desk())
	} else {
		options.Desk, options.Begin = desk.NewFirst(a.firstStart(ctx, o, shared, &begin)), "/plan"
	}
	server := bench.New(ctx, options)
	done()
	if ctx.Err() != nil {
		return nil, nil
	}
	sites, err := bench.Listen(o.port, w.key(), shared)
	if err != nil {
		return nil, err
	}
	s := &servedBench{"http://" + sites[0].Listener.Addr().String() + "/", make(chan error, 1)}
	begin = s.address + "plan"
	a.serving.Go(func() { s.ended <- server.Serve(ctx, sites...) })
	return s, nil
}

// tellFaulty tells what is wrong with the plan while it is served.
func (a *app) tellFaulty(err error) {
	if err == nil {
		a.Note("the plan is mended")
		return
	}
	fmt.Fprintln(a.Err, terminal.Abridged(err.Error()))
}

// openTicks opens the ticks of a plan, beside the setup book.
func (a *app) openTicks(ctx context.Context, w *benchWork, flag string) (*ticks.File, error) {
	book, chosen, err := session.BookPath(flag)
	if err != nil {
		return nil, err
	}
	path := filepath.Join(filepath.Dir(book), "ticks.jsonl")
	if !chosen {
		if err := session.MakeFolderOf(path); err != nil {
			return nil, fmt.Errorf("the folder of the ticks, %s, cannot be made: %w; name a setup book elsewhere with --book or $%s", filepath.Dir(path), session.Cause(err), session.BookVariable)
		}
	}
	kept, err := ticks.Open(ctx, path, w.key(), w.name(), time.Now())
	var named *fs.PathError
	switch {
	case errors.As(err, &named):
		return nil, fmt.Errorf("%s: %w; ticks are kept beside the setup book: name one elsewhere with --book or $%s", named.Path, named.Err, session.BookVariable)
	case err != nil:
		return nil, err
	}
	if n := kept.Damaged(); n > 0 {
		a.Note("%s: %s no ticks and passed over", path, numberedAre(n))
	}
	return kept, nil
}

// numberedAre says "1 line is" or "3 lines are".
func numberedAre(n int) string {
	if n == 1 {
		return "1 line is"
	}
	return fmt.Sprintf("%d lines are", n)
}

// sharedAt is the address that others reach the page at, "" for none.
func (o benchOptions) sharedAt() (string, error) {
	if o.share == "" {
		return "", nil
	}
	if o.share != anyAddress {
		ip := net.ParseIP(o.share)
		switch {
		case ip == nil || ip.IsUnspecified():
			return "", session.Usage(fmt.Errorf("--share takes one address of this machine, such as 192.168.1.20, not %q", plantext.Brief(o.share, 40)))
		case !ip.IsPrivate() && !ip.IsLinkLocalUnicast() && !ip.IsLoopback():
			return "", session.Usage(fmt.Errorf("%s is an address of the whole internet: --share is for the network of your shop alone", ip))
		case ip.Equal(net.IPv4(127, 0, 0, 1)):
			return "", session.Usage(errors.New("127.0.0.1 is the desk's own address, which no other device reaches: leave --share out, or name another address"))
		}
		return ip.String(), nil
	}
	all, err := bench.LocalAddresses()
	switch {
	case err != nil:
		return "", err
	case len(all) == 0:
		return "", errors.New("this machine is in no network that other devices could reach it by")
	case len(all) > 1:
		return "", session.Usage(fmt.Errorf("this machine has several addresses: choose the one of the network that the tablet is in, as in --share=%s; there are %s", all[0], plantext.List(all, "and")))
	}
	return all[0], nil
}

// name is what the plan is called.
func (w *benchWork) name() string {
	if w.file == "" {
		return "the built-in plan"
	}
	return strings.ToValidUTF8(filepath.Base(w.file), "?")
}
