using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>What a shop remembers of the pieces it printed: which issue of a piece a spec is.</summary>
public interface IIssues
{
    /// <summary>Says what is to be known of a row's order, whether or not its piece can be built: that it is another customer's.</summary>
    void CheckOrder(OrderLine line, ICollection<Problem> problems);

    /// <summary>Gives a spec its revision and date of issue.</summary>
    /// <param name="line">The order it was made from.</param>
    /// <param name="problems">Gets what is to be known of it: that papers are superseded or cancelled.</param>
    /// <returns>
    /// The spec as it is issued: as before where nothing of it changed. The same answer each time for the same piece, on any thread.
    /// </returns>
    BuildSpec Issue(OrderLine line, BuildSpec spec, ICollection<Problem> problems);

    /// <summary>The newest revision of a piece whose papers are printed as an older one; null for all others.</summary>
    int? SupersededBy(string order, string piece);
}
