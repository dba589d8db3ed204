package planfile_test
import ("testing";"runtime";"fencecard/joinery/planfile";"fmt";"os";"runtime/pprof";"strings")
func TestZZ(t *testing.T){
 runtime.MemProfileRate=64
 for _, n := range strings.Fields(os.Getenv("DOCS")) {
 data,_:=os.ReadFile("/tmp/fc/docs/"+n)
 data=[]byte(strings.ReplaceAll(string(data),", depht: 3",""))
 var a,b runtime.MemStats
 runtime.GC(); runtime.ReadMemStats(&a)
 p,err:=planfile.Read("plan.yaml",data,nil)
 runtime.GC(); runtime.ReadMemStats(&b)
 fmt.Println(n, len(data), err!=nil,"live", float64(b.HeapAlloc-a.HeapAlloc)/float64(len(data)), "total", float64(b.TotalAlloc-a.TotalAlloc)/float64(len(data)))
 f,_:=os.Create("/tmp/fc/heap."+n); pprof.WriteHeapProfile(f); f.Close()
 runtime.KeepAlive(p)
 }
}
