using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using Xunit;
using static ShopDrawings.Tests.Dxf.DxfFiles;

namespace ShopDrawings.Tests.Dxf;

/// <summary>Runs while no other test allocates.</summary>
[CollectionDefinition(nameof(DxfMemoryTests), DisableParallelization = true)]
[Collection(nameof(DxfMemoryTests))]
public class DxfMemoryTests
{
    [Fact]
    public void Memory_does_not_grow_with_the_drawing()
    {
        var few = MostKept(2_000);
        var many = MostKept(20_000);

        // What a writer that keeps a record of each dimension would need is ten times as much.
        Assert.True(many < few + 300_000, $"{few} bytes for few entities, {many} for many");

        static long MostKept(int count)
        {
            var drawing = new Drawing("Any", "Any", null, [.. Enumerable.Range(0, count).Select(i => i % 2 == 0
                ? (Entity)new LinearDimension(Dimensions, new(i, 0), new(i + 9, 0), new(0, 9), false, "9", 5)
                : new HatchEntity(Bores, Contour.Rectangle(i, 0, i + 1, 1), [], new HatchPattern(45, 1)))]);
            using var stream = new WeighingStream();
            new DxfExporter { Release = DxfRelease.R2000 }.Write(drawing, stream);
            return stream.MostKept;
        }
    }

    // Weighs what is alive, every megabyte written.
    private sealed class WeighingStream : Stream
    {
        private readonly long before = GC.GetTotalMemory(forceFullCollection: true);
        private long length;

        public long MostKept { get; private set; }

        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => length;

        public override long Position { get => length; set => throw new NotSupportedException(); }

        public override void Write(byte[] buffer, int offset, int count)
        {
            if (length / 1_000_000 != (length + count) / 1_000_000) MostKept = Math.Max(MostKept, GC.GetTotalMemory(forceFullCollection: true) - before);
            length += count;
        }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();
    }
}
