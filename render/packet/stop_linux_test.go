package packet

import (
	"bufio"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

// TestMain lets the test binary be a child that writes packets.
func TestMain(m *testing.M) {
	switch job, dir := os.Getenv("PACKET_TEST_JOB"), os.Getenv("PACKET_TEST_DIR"); job {
	case "":
		os.Exit(m.Run())
	case "exchange":
		writeForever(dir, exchange)
	case "two renames":
		writeForever(dir, func(_, _ string) error { return errNoExchange })
	case "in place":
		writeInPlaceForever(dir)
	case "no permission":
		if os.Getuid() == 0 {
			must(syscall.Setuid(65534)) // root may write anywhere
		}
		must(Write(dir, files("a=2"), Options{}))
	case "full disk":
		signal.Ignore(syscall.SIGXFSZ)
		must(unix.Setrlimit(unix.RLIMIT_FSIZE, &unix.Rlimit{Cur: 4096, Max: 4096}))
		must(Write(dir, []File{{"a", []byte("small")}, {"b", make([]byte, 1<<16)}}, Options{}))
	}
}

func must(err error) {
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
}

// generation is the nth packet of a child: other files and other contents
// each time, so that any mix of two shows.
func generation(n int) []File {
	var list []File
	for i := range 6 + n%3 {
		list = append(list, File{fmt.Sprintf("d%d/f%d", n%2, i), []byte(strings.Repeat(fmt.Sprintf("%d %d\n", n, i), 1+i*200))})
	}
	return append(list, File{"generation", []byte(fmt.Sprint(n))})
}

func writeForever(dir string, exchange func(a, b string) error) {
	for n := os.Getpid() * 1000; ; n++ {
		must(write(dir, generation(n), Options{}, exchange))
		fmt.Println("written")
	}
}

// writeInPlaceForever is how not to do it: the control that shows the test
// of stopped writers can fail.
func writeInPlaceForever(dir string) {
	for n := os.Getpid() * 1000; ; n++ {
		list := generation(n)
		must(os.RemoveAll(dir))
		for _, f := range append(list, File{manifestName, manifestOf(list).encode()}) {
			to, err := roomFor(dir, f.Name)
			must(err)
			must(writeFile(to, f.Data))
		}
		fmt.Println("written")
	}
}

// child is the test binary doing a job on a folder.
func child(t *testing.T, job, dir string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	c := exec.Command(self)
	c.Env = append(os.Environ(), "PACKET_TEST_JOB="+job, "PACKET_TEST_DIR="+dir)
	return c
}

// killed lets a child write, and kills it at a random moment after its first
// packet stands.
func killed(t *testing.T, rnd *rand.Rand, job, dir string) {
	t.Helper()
	c := child(t, job, dir)
	out, err := c.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, c.Start())
	line, err := bufio.NewReader(out).ReadString('\n')
	time.Sleep(time.Duration(rnd.IntN(20_000)) * time.Microsecond)
	require.NoError(t, c.Process.Kill())
	_ = c.Wait()
	require.NoError(t, err)
	require.Equal(t, "written\n", line)
}

// whole tells what is wrong with a packet of one generation, "" if nothing.
func whole(dir string) string {
	said, err := Verify(dir)
	if err != nil {
		return err.Error()
	}
	if len(said) > 0 && (len(said) > 1 || said[0] != "own.txt: not written by stilewright") {
		return strings.Join(said, "; ")
	}
	var n int
	text, err := os.ReadFile(filepath.Join(dir, "generation"))
	if _, e := fmt.Sscan(string(text), &n); err != nil || e != nil {
		return fmt.Sprint("no generation: ", err, e)
	}
	m, err := readManifest(dir)
	if err != nil || string(m.encode()) != string(manifestOf(generation(n)).encode()) {
		return fmt.Sprintf("the manifest is not that of generation %d", n)
	}
	return ""
}

// The law: whenever a writer is killed, the folder is one whole packet (or,
// where folders cannot be exchanged, that packet stands aside for a moment
// and the next run brings it back), and what somebody put there stays.
func TestKilledAtAnyMoment(t *testing.T) {
	for _, job := range []string{"exchange", "two renames"} {
		t.Run(job, func(t *testing.T) {
			rnd := rand.New(rand.NewPCG(*seed, 0))
			dir := filepath.Join(t.TempDir(), "p")
			p, err := placeOf(dir)
			require.NoError(t, err)
			require.NoError(t, Write(dir, generation(1), Options{}))
			put(t, "mine", dir, "own.txt")
			halfway, aside := 0, 0
			for i := range 40 {
				killed(t, rnd, job, dir)
				at := dir
				if _, err := os.Lstat(dir); errors.Is(err, os.ErrNotExist) && job == "two renames" {
					at = p.swapped
					aside++
				}
				require.Empty(t, whole(at), "seed %d, kill %d", *seed, i)
				text, err := os.ReadFile(filepath.Join(at, "own.txt"))
				require.NoError(t, err)
				require.Equal(t, "mine", string(text))
				if inside, _ := os.ReadDir(p.parent); len(inside) > 1 {
					halfway++
				}
			}
			t.Logf("of 40 kills %d came in the middle of a write, %d of them between two renames", halfway, aside)
			require.Positive(t, halfway, "no kill came in the middle of a write: the test tested nothing")
			require.NoError(t, Write(dir, generation(2), Options{}))
			require.Empty(t, whole(dir))
			alone(t, dir)
		})
	}
}

// The control: a writer in place is caught by the same test.
func TestKilledWriterInPlaceIsCaught(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	dir := filepath.Join(t.TempDir(), "p")
	for range 40 {
		killed(t, rnd, "in place", dir)
		if whole(dir) != "" {
			return
		}
	}
	t.Fatal("40 kills of a writer in place left a whole packet each time")
}

func TestTwoRunsAtATime(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "p")
	done := make(chan error)
	for run := range 4 {
		go func() {
			var err error
			for n := range 8 {
				err = errors.Join(err, Write(dir, generation(run*100+n), Options{}))
			}
			done <- err
		}()
	}
	for range 4 {
		require.NoError(t, <-done)
	}
	require.Empty(t, whole(dir))
	alone(t, dir)
}

func TestNoPermission(t *testing.T) {
	root := t.TempDir()
	require.NoError(t, os.Chmod(filepath.Dir(root), 0o755)) // the child must reach it
	dir := filepath.Join(root, "p")
	require.NoError(t, Write(dir, files("a=1"), Options{}))
	require.NoError(t, os.Chmod(root, 0o555))
	out, err := child(t, "no permission", dir).CombinedOutput()
	require.Error(t, err)
	require.Contains(t, string(out), "packet "+dir+": there is no permission to write there; nothing was changed")
	require.Equal(t, []string{"a=1"}, tree(t, dir))
	alone(t, dir)
}

// A limit on file sizes stands for a full disk: a write stops in the middle.
func TestDiskFullHalfway(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "p")
	require.NoError(t, Write(dir, files("a=1"), Options{}))
	out, err := child(t, "full disk", dir).CombinedOutput()
	require.Error(t, err)
	require.Contains(t, string(out), "packet "+dir+": it could not be written; nothing was changed")
	require.Equal(t, []string{"a=1"}, tree(t, dir))
	alone(t, dir)
}
