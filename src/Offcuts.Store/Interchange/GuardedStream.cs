namespace Offcuts.Store.Interchange;

/// <summary>
/// The caller's stream, read only, which ends early where the file is too large or opens with the mark of another encoding
/// than UTF-8. Leaves the caller's stream open.
/// </summary>
internal sealed class GuardedStream(Stream inner, long most) : Stream
{
    private readonly byte[] _first = new byte[4];
    private int _firstCount;
    private long _count;

    /// <summary>True once more than the limit was there.</summary>
    public bool TooLarge { get; private set; }

    /// <summary>True where the file opens with the mark of UTF-16 or UTF-32.</summary>
    public bool OtherEncoding =>
        _first is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] or [0x00, 0x00, 0xFE, 0xFF];

    public override int Read(Span<byte> buffer)
    {
        if (TooLarge || OtherEncoding) return 0;
        var read = inner.Read(buffer);
        for (var i = 0; i < read && _firstCount < _first.Length; i++) _first[_firstCount++] = buffer[i];
        _count += read;
        TooLarge = _count > most;
        return TooLarge || OtherEncoding ? 0 : read;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
