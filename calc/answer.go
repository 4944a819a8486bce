package calc

// Answer is one thing that a person writes into the worksheet.
type Answer uint8

// The answers that the sums use.
const (
	NoAnswer Answer = iota
	Bicep
	BicepOther
	Bust
	BicepEase
	BustEase
	SleeveWidth
	SleeveMeasured
	SleeveAllowance
	CapFront
	CapBack
	BodiceFrontWidth
	BodiceBackWidth
	BodiceMeasured
	BodiceAllowance
	TakeOffFront
	TakeOffBack
	FinishedBust
	ArmholeFront
	ArmholeBack
	LimitSleeve
	LimitBodice
	ShareSleeve
	ShareBust
	FollowCustom
	SlideLength
	Ruler
	HighBust
	Waist
	Hip
	Elbow
	Wrist
	CapHeight
	UnderarmSeam
	HemWidth
	CornerOutFront
	CornerDownFront
	CornerOutBack
	CornerDownBack
	SideSeam
	WaistFront
	WaistBack
	AnyGirth // a bicep or a bust: nothing is asked without one
	ElbowWidth
	BustDown
	HipFront
	HipBack
	WaistEase
	HipEase
	ElbowEase
	WristEase

	AnswerCount // how many there are, with no answer
)
