using System.Buffers.Binary;
using System.Runtime.InteropServices;
using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>A frame's samples as the bytes a row keeps: little-endian 32-bit floats, cell after cell.</summary>
internal static class FrameBytes
{
    public static byte[] Write(Frame frame)
    {
        var bytes = new byte[frame.SamplesKg.Length * frame.Count * sizeof(float)];
        var at = 0;
        foreach (var cell in frame.SamplesKg)
        {
            foreach (var sample in cell)
            {
                BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(at), sample);
                at += sizeof(float);
            }
        }

        return bytes;
    }

    public static float[][] Read(byte[] bytes, int cells)
    {
        var count = bytes.Length / sizeof(float) / cells;
        var samples = new float[cells][];
        for (var c = 0; c < cells; c++)
        {
            samples[c] = new float[count];
            var slice = bytes.AsSpan(c * count * sizeof(float), count * sizeof(float));
            if (BitConverter.IsLittleEndian)
            {
                MemoryMarshal.Cast<byte, float>(slice).CopyTo(samples[c]);
                continue;
            }

            for (var i = 0; i < count; i++)
                samples[c][i] = BinaryPrimitives.ReadSingleLittleEndian(slice[(i * sizeof(float))..]);
        }

        return samples;
    }
}
