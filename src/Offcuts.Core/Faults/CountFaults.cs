namespace Offcuts.Core.Faults;

/// <summary>Every sentence about pictures that can't be read and counts that can't be made.</summary>
public static class CountFaults
{
    public static Fault PictureKind() => new("is neither a JPEG nor a PNG picture");

    public static Fault PictureKindOfPhone() => new("is a HEIF or AVIF picture, which is not read; set the phone's camera to JPEG (often called most compatible)");

    public static Fault PictureEmpty() => new("is empty: it was not copied whole");

    public static Fault PictureHeader() => new("is broken: its first part does not tell how large it is");

    public static Fault PictureEndsEarly() => new("is broken: it ends in the middle");

    public static Fault PictureBroken() => new("is broken: it can't be decoded");

    public static Fault PictureJpegKind() => new("is a kind of JPEG that cameras don't make; save it again as an ordinary one");

    public static Fault PictureTooLarge(long width, long height, int most) =>
        new(FormattableString.Invariant($"has {width} x {height} pixels; a picture has at most {most} million"));

    public static Fault PictureTooHeavy(int mostMegabytes) =>
        new(FormattableString.Invariant($"would take more than {mostMegabytes} MB of memory; save it again as an ordinary JPEG"));

    public static Fault PictureNoMemory() => new("is too large for the memory that is free");

    public static Fault PictureTooManyBytes(int mostMegabytes) => new(FormattableString.Invariant($"has more than {mostMegabytes} MB"));

    public static Fault PictureSwells() => new("holds more than its size says; it was left alone");

    public static Fault NotFound() => new("is not there");

    public static Fault CannotOpen() => new("can't be opened");

    public static Fault ScannedTooLarge(int mostMegabytes) => new(FormattableString.Invariant($"is no scanner's file: it has more than {mostMegabytes} MB"));

    public static Fault ScannedNotText() => new("is neither a picture nor text");

    public static Fault NothingToCount() => new("there is no picture and no scanner's file among these");

    public static Fault TooManyFiles(int most) => new(FormattableString.Invariant($"count at most {most} files at once"));

    public static Fault NothingSeen() => new("no label of this yard was seen, so there is nothing to accept");

    public static Fault NothingToAccept() => new("say what was seen: pictures, their folder, or a scanner's file, like: offcuts count photos --accept");

    public static Fault Stopped() => new("stopped: nothing was counted");

    public static Fault WholeAndPartly() => new("--whole and --partly can't both be meant");
}
