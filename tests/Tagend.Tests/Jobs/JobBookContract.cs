using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>What every kind of job book must do. A class for each kind runs these on a place of its own.</summary>
public abstract class JobBookContract : OlderBookContract
{
    [Fact]
    public void OpenExisting_WhereNoBookWasBegun_IsNone() => Assert.Null(Address.OpenExisting(TimeProvider.System));

    [Fact]
    public void Record_Specs_AreThereAfterReopening()
    {
        var piece = TestBook.Piece("Example club", "compound bow, hybrid cam, 70 lb");
        using (var book = Open())
        {
            Assert.Equal(1, book.Record([piece]));
        }

        using var again = Address.OpenExisting(new StoppedClock())!;
        var job = Assert.Single(again.Find(new JobSearch()));
        Assert.Equal(
            new PrintedJob
            {
                Number = job.Number,
                Order = "D-101",
                Piece = "string",
                Revision = 1,
                Issued = piece.Spec.Date,
                Kind = "compound-string",
                Material = "hmpe-0145",
                Strands = 24,
                FinishedLength = piece.Spec.FinishedLength,
                Tolerance = piece.Spec.Tolerance,
                LaidUpLength = piece.Spec.LaidUpLength,
                Posts = piece.Spec.Posts.Outside,
                Customer = "Example club",
                Bow = "compound bow, hybrid cam, 70 lb",
                Due = "",
                Tag = TagWriter.Write(piece.Spec),
                PrintedAt = StoppedClock.Now,
            },
            job);
    }

    [Fact]
    public void JobsOf_SomeOrders_AreAllTheyHaveInTheOrderOfPrinting()
    {
        using var book = Open();
        book.Record([TestBook.Piece(cells: ("order", "D-2")), TestBook.Piece(), TestBook.Piece(cells: ("piece", "buss")), TestBook.Piece(cells: ("order", "D-3"))]);
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        book.Log(TestBook.Piece().Spec, TestBook.Built with { Turns = 44 }, Guid.NewGuid());
        Assert.Equal(
            [("D-2", "string", 0), ("D-101", "string", 2), ("D-101", "buss", 0)],
            book.JobsOf(["D-101", "D-9", "D-2"]).Select(j => (j.Order, j.Piece, j.Builds.Count)));
        Assert.Empty(book.JobsOf(["D-9"]));
        Assert.Equal(4, book.JobsOf([.. Enumerable.Range(0, 300).Select(i => $"D-{i}")]).Count);
    }

    [Fact]
    public void StateOfBuilds_IsAnotherAfterEachChangeOfABuildAndNoOther()
    {
        using var book = Open();
        var known = new HashSet<string> { book.StateOfBuilds() };
        book.Record([TestBook.Piece("Example club")]);
        Assert.Contains(book.StateOfBuilds(), known);
        var spec = TestBook.Piece().Spec;
        var first = book.Log(spec, TestBook.Built, Guid.NewGuid());
        Assert.True(known.Add(book.StateOfBuilds()));
        var second = book.Log(spec, TestBook.Built, Guid.NewGuid());
        Assert.True(known.Add(book.StateOfBuilds()));
        book.LeaveOut([first.Number], isLeftOut: true);
        Assert.True(known.Add(book.StateOfBuilds()));
        book.Correct(second.Number, TestBook.Built with { Turns = 44 }, "", "", Guid.NewGuid());
        Assert.True(known.Add(book.StateOfBuilds()));
        book.Strike(first.Number, "", "", Guid.NewGuid());
        Assert.True(known.Add(book.StateOfBuilds()));
        book.Forget("Example club");
        book.Enter("D-101", null, EventKind.Shipped, "", "", Guid.NewGuid());
        Assert.Contains(book.StateOfBuilds(), known);
    }

    [Fact]
    public void Record_TheSameAgain_KeepsOne()
    {
        using var book = Open();
        book.Record([TestBook.Piece()]);
        Assert.Equal(1, book.Record([TestBook.Piece(), TestBook.Piece(cells: ("finished_length", "60 1/8 in"))]));
        Assert.Equal(2, book.Find(new JobSearch()).Count());
    }

    [Fact]
    public void Record_TheSameIssueInAnotherUnitOrOfAnotherDay_IsTheSameEntry()
    {
        using var book = Open();
        var first = TestBook.Piece();
        book.Record([first]);
        var metric = new Tagend.Specs.Build(SpecFixture.Build(LengthUnit.Millimeter).Spec!, first.Slip);
        Assert.NotEqual(TagWriter.Write(first.Spec), TagWriter.Write(metric.Spec));
        Assert.Equal(0, book.Record([metric, new Tagend.Specs.Build(first.Spec with { Date = first.Spec.Date.AddDays(1) }, first.Slip)]));
        var logged = book.Log(metric.Spec, TestBook.Built, Guid.NewGuid());
        var job = Assert.Single(book.Find(new JobSearch()));
        Assert.Equal((TagWriter.Write(first.Spec), logged), (job.Tag, Assert.Single(job.Builds)));
        Assert.Equal(1, book.Record([new Tagend.Specs.Build(first.Spec with { Revision = 2 }, first.Slip)]));
    }

    [Fact]
    public void Record_OneThatCannotBeEntered_EntersNone()
    {
        using var book = Open();
        Assert.Throws<InvalidOperationException>(() => book.Record(Broken()));
        Assert.Empty(book.Find(new JobSearch()));
        Assert.Equal(1, book.Record([TestBook.Piece()]));

        static IEnumerable<Build> Broken()
        {
            yield return TestBook.Piece();
            throw new InvalidOperationException();
        }
    }

    public static TheoryData<JobSearch, string> Searches => new()
    {
        { new JobSearch { Order = "D-2" }, "D-2/string D-2/buss" },
        { new JobSearch { Order = "D-2", Piece = "buss" }, "D-2/buss" },
        { new JobSearch { Piece = "string" }, "D-1/string D-2/string" },
        { new JobSearch { Order = "d-2" }, "" },
        { new JobSearch { Customer = "ÉXAMPLE" }, "D-1/string" },
        { new JobSearch { Customer = "" }, "D-1/string D-2/string D-2/buss" },
        { new JobSearch { Customer = "b" }, "D-1/string" },
        { new JobSearch { Customer = "E C" }, "D-1/string" },
        { new JobSearch { Customer = "e cl" }, "D-1/string" },
        { new JobSearch { Customer = "e  cl" }, "" },
        { new JobSearch { Customer = "\"q\" 50%" }, "D-2/string" },
        { new JobSearch { Customer = "_q_" }, "" },
        { new JobSearch { Customer = "50% \\" }, "D-2/string" },
        { new JobSearch { Customer = "q\" 5*" }, "" },
        { new JobSearch { Customer = "%" }, "D-2/string" },
        { new JobSearch { Bow = "Crossbow" }, "D-2/string" },
        { new JobSearch { Bow = "BOW", Customer = "club" }, "D-1/string" },
        { new JobSearch { From = new DateOnly(2026, 3, 14), To = new DateOnly(2026, 3, 14) }, "D-1/string D-2/string D-2/buss" },
        { new JobSearch { From = new DateOnly(2026, 3, 15) }, "" },
        { new JobSearch { To = new DateOnly(2026, 3, 13) }, "" },
        { new JobSearch { Customer = "' OR 1=1 --" }, "" },
        { new JobSearch { Order = "' OR 1=1 --" }, "" },
    };

    [Theory]
    [MemberData(nameof(Searches))]
    public void Find_BySearch_GivesWhatFits(JobSearch search, string found)
    {
        using var book = Open();
        book.Record(
        [
            TestBook.Piece("Éxample club", "compound bow, 60 lb", ("order", "D-1")),
            TestBook.Piece("Sample \"Q\" 50% \\", "crossbow, 150 lb", ("order", "D-2")),
            TestBook.Piece("", "", ("order", "D-2"), ("piece", "buss")),
        ]);
        Assert.Equal(found, string.Join(' ', book.Find(search).Select(j => $"{j.Order}/{j.Piece}")));
    }

    [Theory]
    [InlineData(499)]
    [InlineData(500)]
    [InlineData(501)]
    public void Find_AsManyAsAreReadAtOnceOrOneMore_GivesEachOnceInOrder(int jobs)
    {
        using var book = Open();
        var spec = TestBook.Piece().Spec;
        book.Record(Enumerable.Range(1, jobs).Select(i => new Build(spec with { Order = $"N-{i:000}" }, OrderSlip.Blank)));
        Assert.Equal(Enumerable.Range(1, jobs).Select(i => $"N-{i:000}"), book.Find(new JobSearch()).Select(j => j.Order));
    }

    [Fact]
    public void Find_ByDates_GivesEachOnceByDateThenInTheOrderOfPrinting()
    {
        using var book = Open();
        var spec = TestBook.Piece().Spec;
        book.Record(Enumerable.Range(1, 1203).Select(i => new Tagend.Specs.Build(
            spec with { Order = $"N-{i:0000}", Date = spec.Date.AddDays(-(i % 3)) }, new Tagend.Orders.OrderSlip("Example club", "", "", ""))));
        var expected = Enumerable.Range(1, 1203).OrderByDescending(i => i % 3).ThenBy(i => i).Select(i => $"N-{i:0000}").ToList();
        Assert.Equal(expected, book.Find(new JobSearch { From = spec.Date.AddDays(-5) }).Select(j => j.Order));
        Assert.Equal(expected.Take(401), book.Find(new JobSearch { To = spec.Date.AddDays(-2), Customer = "club" }).Select(j => j.Order));
    }

    [Fact]
    public void Find_WhileItIsRead_LetsOthersWrite()
    {
        using var book = Open();
        book.Record([TestBook.Piece(cells: ("order", "D-1")), TestBook.Piece(cells: ("order", "D-2"))]);
        using var found = book.Find(new JobSearch()).GetEnumerator();
        Assert.True(found.MoveNext());
        using var other = Open();
        Assert.Equal(1, other.Record([TestBook.Piece(cells: ("order", "D-3"))]));
    }

    [Fact]
    public void Newest_OfAPieceIssuedTwice_IsTheLastPrinted()
    {
        using var book = Open();
        book.Record([TestBook.Piece(cells: ("finished_length", "60 1/8 in")), TestBook.Piece(), TestBook.Piece(cells: ("piece", "buss"))]);
        var logged = book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        var newest = book.Newest("D-101", "string")!;
        Assert.Equal(TagWriter.Write(TestBook.Piece().Spec), newest.Tag);
        Assert.Equal([logged], newest.Builds);
        Assert.Null(book.Newest("D-101", "cable"));
    }

    [Fact]
    public void Log_Build_ComesBackBitForBit()
    {
        var piece = TestBook.Piece();
        var built = TestBook.Built with { Turns = 45.1, Minutes = 1 / 3.0, Who = "Ä\"'; --" };
        LoggedBuild logged;
        using (var book = Open())
        {
            book.Record([piece]);
            logged = book.Log(piece.Spec, built, Guid.NewGuid());
        }

        using var again = Open();
        var build = Assert.Single(Assert.Single(again.Find(new JobSearch())).Builds);
        Assert.Equal(new LoggedBuild(logged.Number, built, logged.LoggedAt, IsLeftOut: false), build);
    }

    [Fact]
    public void Log_SpecThatWasNotRecorded_EntersItFromItsTag()
    {
        using var book = Open();
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        Assert.Single(Assert.Single(book.Find(new JobSearch { Order = "D-101" })).Builds);
    }

    [Fact]
    public void Log_TheSameWriteAgain_IsEnteredOnce()
    {
        using var book = Open();
        var key = Guid.NewGuid();
        var first = book.Log(TestBook.Piece().Spec, TestBook.Built, key);
        using var later = Open();
        Assert.Equal(first, later.Log(TestBook.Piece().Spec, TestBook.Built, key));
        Assert.NotEqual(first.Number, later.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid()).Number);
        Assert.Equal(2, Assert.Single(book.Find(new JobSearch())).Builds.Count);
        Assert.Equal(first, book.Logged(key));
        Assert.Null(book.Logged(Guid.NewGuid()));
    }

    [Fact]
    public void Find_NewestFirst_IsTheOtherOrder()
    {
        using var book = Open();
        book.Record(Enumerable.Range(1, 1_100).Select(i => new Build(TestBook.Piece().Spec with { Order = $"N-{i:0000}" }, OrderSlip.Blank)));
        var numbers = book.Find(new JobSearch { IsNewestFirst = true }).Select(j => j.Number).ToList();
        Assert.Equal(1_100, numbers.Count);
        Assert.Equal(book.Find(new JobSearch()).Select(j => j.Number).Reverse(), numbers);
    }

    [Fact]
    public void Find_Built_GivesThoseWithABuildOnly()
    {
        using var book = Open();
        book.Record([TestBook.Piece(), TestBook.Piece(cells: ("order", "D-2"))]);
        book.Log(TestBook.Piece(cells: ("order", "D-2")).Spec, TestBook.Built, Guid.NewGuid());
        Assert.Equal("D-2", Assert.Single(book.Find(new JobSearch { IsBuilt = true })).Order);
        Assert.Equal(2, book.Find(new JobSearch()).Count());
    }

    [Fact]
    public void LeaveOut_AndTakeIn_AreRemembered()
    {
        using var book = Open();
        var number = book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid()).Number;
        book.LeaveOut([number], isLeftOut: true);
        Assert.True(OnlyBuild(book).IsLeftOut);
        book.LeaveOut([number], isLeftOut: false);
        Assert.False(OnlyBuild(book).IsLeftOut);
    }

    [Fact]
    public void LeaveOut_OneNumberOfNoBuild_ChangesNone()
    {
        using var book = Open();
        var number = book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid()).Number;
        var fault = Assert.Throws<TagendException>(() => book.LeaveOut([number, 77], isLeftOut: true));
        Assert.Equal("there is no build 77 in the job book: check the number", fault.Message);
        Assert.False(OnlyBuild(book).IsLeftOut);
    }

    [Fact]
    public void Record_WhatIsPrintedBesideTheSpec_ComesBackAndIsRenewedWhereSomethingIsGiven()
    {
        using var book = Open("bench 1");
        var spec = TestBook.Piece().Spec;
        var slip = new OrderSlip("Example club", "bow", "2026-12-04", "left hand; soft")
        {
            Language = "de",
            Units = LengthUnit.Millimeter,
            Accessories = ["loop", "silencers A 12 in"],
        };
        book.Record([new Build(spec, slip)]);
        var job = Assert.Single(book.Find(new JobSearch()));
        Assert.Equal(("bench 1", slip), (job.Bench, job.Slip));
        Assert.Equal(0, book.Record([new Build(spec, OrderSlip.Blank), new Build(spec, OrderSlip.Blank with { Due = "2026-12-11" })]));
        Assert.Equal(slip with { Due = "2026-12-11" }, Assert.Single(book.Find(new JobSearch { Customer = "example" })).Slip);
    }

    [Fact]
    public void NextLabel_OfASheet_IsKeptForEachStockAndBench()
    {
        using (var book = Open("bench 1"))
        {
            Assert.Null(book.NextLabel("sheet-10"));
            book.KeepLabel("sheet-10", 4);
            book.KeepLabel("sheet-14", 2);
            book.KeepLabel("sheet-10", 7);
            Assert.Equal((7, 2), (book.NextLabel("sheet-10"), book.NextLabel("sheet-14")));
        }

        using var other = Open("bench 2");
        Assert.Null(other.NextLabel("sheet-10"));
    }

    [Fact]
    public void Find_Lot_GivesWhatWasBuiltOfIt()
    {
        using var book = Open();
        book.Record([TestBook.Piece("Example club"), TestBook.Piece(cells: ("order", "D-2")), TestBook.Piece(cells: ("order", "D-3"))]);
        var key = Guid.NewGuid();
        var built = TestBook.Built with { Lots = ["H88-4", "T 0210"] };
        book.Log(TestBook.Piece().Spec, built, key);
        book.Log(TestBook.Piece().Spec, built, key);
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        book.Log(TestBook.Piece(cells: ("order", "D-2")).Spec, TestBook.Built with { Lots = ["H88-44"] }, Guid.NewGuid());
        var job = Assert.Single(book.Find(new JobSearch { Lot = "h88-4" }));
        Assert.Equal(("Example club", "D-101"), (job.Customer, job.Order));
        Assert.Equal([built, TestBook.Built], job.Builds.Select(b => b.Built));
        Assert.Single(book.Find(new JobSearch { Lot = "T 0210", Customer = "club" }));
        Assert.Empty(book.Find(new JobSearch { Lot = "H88" }));
        book.Strike(job.Builds[0].Number, "AB", "", Guid.NewGuid());
        Assert.Empty(book.Find(new JobSearch { Lot = "h88-4" }));
    }

    [Fact]
    public async Task OpenOrBegin_ManyRunsAtOnce_BeginOneBookAndEnterAll()
    {
        await Task.WhenAll(Enumerable.Range(0, 4).Select(run => Task.Run(() =>
        {
            foreach (var number in Enumerable.Range(0, 5))
            {
                using var book = Open();
                book.Record([TestBook.Piece(cells: ("order", $"R-{run}-{number}"))]);
            }
        })));
        using var all = Open();
        Assert.Equal(20, all.Find(new JobSearch()).Count());
    }

    [Fact]
    public async Task LogFirst_BenchesAtTheSameInstant_LogOneBuild()
    {
        var spec = TestBook.Piece().Spec;
        using var book = Open();
        book.Record([TestBook.Piece("Example club")]);
        using var start = new Barrier(6);
        var logged = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Factory.StartNew(
            () =>
            {
                using var bench = Open();
                start.SignalAndWait();
                return bench.LogFirst(spec, TestBook.Built, Guid.NewGuid());
            },
            TaskCreationOptions.LongRunning)));
        var one = Assert.Single(logged, l => l is not null);
        Assert.Equal(one, Assert.Single(Assert.Single(book.Find(new JobSearch())).Builds));
    }

    [Fact]
    public void LogFirst_BuildThatStands_LogsNoneButItsOwnAgain()
    {
        var spec = TestBook.Piece().Spec;
        using var book = Open();
        var key = Guid.NewGuid();
        Assert.Null(book.Stands(spec));
        var first = book.LogFirst(spec, TestBook.Built, key)!;
        Assert.Equal(first, book.LogFirst(spec, TestBook.Built, key)); // sent again, for its answer was lost
        Assert.Equal(first, book.Stands(spec));
        Assert.Null(book.LogFirst(spec, TestBook.Built, Guid.NewGuid()));
        Assert.NotNull(book.LogFirst(TestBook.Piece(cells: ("piece", "string 2")).Spec, TestBook.Built, Guid.NewGuid()));
        book.Strike(first.Number, "AB", "", Guid.NewGuid());
        Assert.Null(book.Stands(spec));
        Assert.NotNull(book.LogFirst(spec, TestBook.Built, Guid.NewGuid()));
    }
}
