using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The inverse of a basis, held against its basis column by column.</summary>
public sealed class BasisInverseTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void However_variables_come_and_go_the_inverse_times_the_basis_is_the_identity(int seed)
    {
        var random = new Random(seed);
        var (matrix, exchanged) = (new GrowingMatrix(), 0);
        var basis = new BasisInverse(matrix);
        for (var change = 0; change < 120; change++)
        {
            if (change < 5 || random.Next(6) == 0) AddRow();
            if (random.Next(2) == 0) AddColumn();
            matrix.Pack();
            if (matrix.Columns > 0) Exchange();
            if (random.Next(20) == 0)
            {
                var (columns, rows) = basis.Kept();
                basis.Make(columns, rows);
                basis.Kept().Columns.Should().BeEquivalentTo(columns);
            }

            IsInverse();
        }

        exchanged.Should().BeGreaterThan(30);

        void AddRow()
        {
            (int, double)[] entries = [.. Drawn(matrix.Columns)];
            basis.AddRow(entries);
            matrix.AddRow(entries);
        }

        void AddColumn()
        {
            matrix.AddColumn(Drawn(matrix.Rows));
            basis.AddColumn();
        }

        IEnumerable<(int, double)> Drawn(int of) => Enumerable.Range(0, of).Where(_ => random.Next(3) == 0).Select(at => (at, (double)random.Next(1, 5))).ToArray();

        void Exchange()
        {
            var entering = random.Next(4) == 0 ? -1 - random.Next(matrix.Rows) : random.Next(matrix.Columns);
            if (basis.Place(entering) >= 0) return;
            var column = new double[basis.Room];
            basis.Column(entering, column);
            var place = random.Next(basis.Rows);
            if (Math.Abs(column[place]) < 0.05) return;
            var leaving = basis.Head(place);
            basis.Exchange(place, entering, column);
            (basis.Place(entering), basis.Place(leaving), basis.Head(place)).Should().Be((place, -1, entering));
            exchanged++;
        }

        void IsInverse()
        {
            var column = new double[Math.Max(1, basis.Room)];
            for (var place = 0; place < basis.Rows; place++)
            {
                basis.Column(basis.Head(place), column);
                for (var other = 0; other < basis.Rows; other++) column[other].Should().BeApproximately(other == place ? 1 : 0, 1e-6);
                basis.Square(place).Should().BeApproximately(basis.Row(place).Take(basis.Rows).Sum(number => number * number), 1e-6 * (1 + basis.Square(place)));
            }
        }
    }

    [Fact]
    public void A_column_that_fits_at_no_row_stays_outside_and_its_place_goes_to_a_slack()
    {
        var matrix = new GrowingMatrix();
        var basis = new BasisInverse(matrix);
        for (var row = 0; row < 2; row++)
        {
            basis.AddRow([]);
            matrix.AddRow([]);
        }

        foreach (var factor in (double[])[1, 2])
        {
            matrix.AddColumn([(0, factor), (1, factor)]);
            basis.AddColumn();
        }

        basis.Make([0, 1], [0, 1]);

        basis.Kept().Columns.Should().ContainSingle("the two say the same");
        Enumerable.Range(0, 2).Count(place => basis.Head(place) < 0).Should().Be(1);
    }
}
