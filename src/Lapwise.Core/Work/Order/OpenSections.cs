using System.Numerics;

namespace Lapwise.Core.Work.Order;

/// <summary>Sections not done that have a deadline, walked in ascending order; the time is that of the few, not of all sections.</summary>
internal sealed class OpenSections(int sections)
{
    private readonly ulong[] _words = new ulong[(sections + 63) / 64];

    public int Count { get; private set; }

    public void Add(int section)
    {
        ref var word = ref _words[section >> 6];
        var bit = 1UL << (section & 63);
        if ((word & bit) != 0) return;
        word |= bit;
        Count++;
    }

    public void Remove(int section)
    {
        ref var word = ref _words[section >> 6];
        var bit = 1UL << (section & 63);
        if ((word & bit) == 0) return;
        word &= ~bit;
        Count--;
    }

    public Walk GetEnumerator() => new(_words);

    /// <summary>Where a walk over the sections stands.</summary>
    internal struct Walk(ulong[] words)
    {
        private int _word = -1;
        private ulong _left;

        public int Current { get; private set; }

        public bool MoveNext()
        {
            while (_left == 0)
            {
                if (++_word == words.Length) return false;
                _left = words[_word];
            }

            Current = (_word << 6) + BitOperations.TrailingZeroCount(_left);
            _left &= _left - 1;
            return true;
        }
    }
}
